import type { Topic } from '#lib/model/topic.ts';
import { activeTopics } from '#lib/syllabus/tree.ts';
import { topicName } from '../../parts/topic-name.ts';
import { t } from '../../text.ts';
import { linkTo } from '../route.ts';

interface TopicStepsProps {
  here: 'read' | 'condense';
  topics: readonly Topic[];
  topicId: string;
}

/** From reading a topic to condensing it, and on to the next topic. */
export function TopicSteps({ here, topics, topicId }: TopicStepsProps) {
  const active = activeTopics(topics);
  const next = active[active.findIndex(({ id }) => id === topicId) + 1];
  return (
    <nav aria-label={t('notesSteps')} class="row topic-steps">
      <a href={linkTo('notes')}>{t('pageNotes')}</a>
      <a href={linkTo(`read/${topicId}`)} aria-current={here === 'read' ? 'page' : undefined}>
        {t('readTopic')}
      </a>
      <a href={linkTo(`condense/${topicId}`)} aria-current={here === 'condense' ? 'page' : undefined}>
        {t('condenseTopic')}
      </a>
      <a href={linkTo(`topic/${topicId}`)}>{t('topicCoverage')}</a>
      {next && <a href={linkTo(`${here}/${next.id}`)}>{t('nextTopic', topicName(next))}</a>}
    </nav>
  );
}
