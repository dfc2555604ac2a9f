import { useState } from 'preact/hooks';
import type { Topic } from '#lib/model/topic.ts';
import { moveContents } from '#lib/store/actions/topics.ts';
import type { CourseDeck } from '#lib/store/course-deck.ts';
import { type Leftover, leftoversOf } from '#lib/syllabus/leftovers.ts';
import { activeTopics } from '#lib/syllabus/tree.ts';
import { useDeck } from '../../deck/deck-context.tsx';
import { useAction } from '../../deck/use-action.ts';
import { topicName } from '../../parts/topic-name.ts';
import { Trouble } from '../../parts/trouble.tsx';
import { t, tn } from '../../text.ts';
import { linkTo } from '../route.ts';

/** What stands under topics that the syllabus has no longer, to be moved; nothing where there is none. */
export function Leftovers({ deck }: { deck: CourseDeck }) {
  const leftovers = leftoversOf(deck);
  if (leftovers.length === 0) return null;
  const topics = activeTopics(deck.topics);
  return (
    <section class="sheet stack" aria-labelledby="leftovers">
      <h2 id="leftovers">{t('leftovers')}</h2>
      <p class="soft">{t('leftoversHow')}</p>
      <ul class="items">
        {leftovers.map((leftover) => (
          <Row key={leftover.topic.id} leftover={leftover} topics={topics} />
        ))}
      </ul>
    </section>
  );
}

const EXCERPT = 100;

function Row({ leftover, topics }: { leftover: Leftover; topics: Topic[] }) {
  const db = useDeck();
  const action = useAction();
  const [to, setTo] = useState('');
  const { topic, clips, questions, lines, lessons } = leftover;
  const id = `move-${topic.id}`;
  return (
    <li>
      <h3>{topicName(topic)}</h3>
      <ul class="plain-list">
        {clips.map((clip) => (
          <li key={clip.id}>
            <a class="excerpt" href={linkTo(`clip/${clip.id}`)}>
              {clip.text.slice(0, EXCERPT) || t('clipPicture')}
            </a>
          </li>
        ))}
      </ul>
      {questions.length + lines.length + lessons.length > 0 && (
        <p class="soft">
          {tn('leftoverQuestions', questions.length)}, {tn('leftoverLines', lines.length)}
          {lessons.length > 0 && `, ${t('leftoverLessons', lessons.length)}`}
        </p>
      )}
      <label for={id} class="soft">
        {t('leftoverMoveTo')}
      </label>
      <div class="row nowrap">
        <select id={id} value={to} onChange={(event) => setTo(event.currentTarget.value)}>
          <option value="">{t('topicChoose')}</option>
          {topics.map((one) => (
            <option key={one.id} value={one.id}>
              {topicName(one)}
            </option>
          ))}
        </select>
        <button
          disabled={action.busy || !topics.some((one) => one.id === to)}
          aria-label={t('leftoverMoveNamed', topicName(topic))}
          onClick={() => void action.run(() => moveContents(db, topic.id, to, Date.now()))}
        >
          {t('leftoverMove')}
        </button>
      </div>
      <Trouble text={action.trouble} />
    </li>
  );
}
