import { useMemo } from 'preact/hooks';
import type { Clip } from '#lib/model/clip.ts';
import { type ReadingGroup, readingGroups } from '#lib/notes/reading-groups.ts';
import { isOwn } from '#lib/notes/copied.ts';
import { topicName } from '../../parts/topic-name.ts';
import { t } from '../../text.ts';
import { linkTo } from '../route.ts';
import { ReadCard } from './read-card.tsx';
import { TopicSteps } from './topic-steps.tsx';
import { UndoRedo, useUndo } from './undo-redo.tsx';
import { Unclear } from './unclear.tsx';
import type { CourseNotes } from './use-notes.ts';

/** A topic's clips, read actively: statement by statement, second explanations beside the first, own words below. */
export function ReadView({ notes, topicId }: { notes: CourseNotes; topicId: string }) {
  const topic = notes.topics.find(({ id }) => id === topicId);
  const clips = useMemo(
    () => notes.clips.filter(({ topicIds }) => topicIds.includes(topicId)),
    [notes.clips, topicId],
  );
  const statements = useMemo(
    () => notes.statements.filter((one) => one.topicId === topicId && !one.off),
    [notes.statements, topicId],
  );
  const groups = useMemo(() => readingGroups(clips, statements), [clips, statements]);
  const undoing = useUndo(nothing);
  if (!topic) return <h1>{t('topicGone')}</h1>;
  const understood = clips.filter(isUnderstood).length;
  const [read, unread] = [groups.filter(isExplained), groups.filter((group) => !isExplained(group))];
  return (
    <div class="stack">
      <h1>{topicName(topic)}</h1>
      <TopicSteps here="read" topics={notes.topics} topicId={topicId} />
      <div class="row spread">
        <p>
          {t('readUnderstood', understood, clips.length)}
          {statements.length > 0 &&
            ` · ${t('readExplained', statements.length - unread.length, statements.length)}`}
        </p>
        <UndoRedo undoing={undoing} />
      </div>
      <div class="sheet">
        <Unclear
          place={{ store: 'topics', id: topicId }}
          row={topic}
          label={t('readTopicUnclear')}
          clips={clips}
        />
      </div>
      {clips.length === 0 && (
        <p class="remark">
          {t('readNoClips')} <a href={linkTo(`topic/${topicId}`)}>{t('topicCoverage')}</a>
        </p>
      )}
      {read.map(({ statement, clips: here, also }) => (
        <section class="stack" key={statement?.id ?? ''}>
          {statement ? (
            <h2>{`${statement.code} ${statement.text}`.trim()}</h2>
          ) : (
            statements.length > 0 && <h2>{t('readUnticked')}</h2>
          )}
          <div class="read-pair">
            {here.map((clip) => (
              <ReadCard key={clip.id} clip={clip} notes={notes} topicId={topicId} />
            ))}
          </div>
          {also.map(({ id, text }) => (
            <p class="soft" key={id}>
              {t('readAlso')} {text.slice(0, 80)}
            </p>
          ))}
          {here.length > 0 && new Set([...here, ...also].map(({ sourceId }) => sourceId)).size === 1 && (
            <p class="soft">{t('readSecond')}</p>
          )}
        </section>
      ))}
      {unread.length > 0 && (
        <section class="sheet stack">
          <h2>{t('readNothing')}</h2>
          <ul>
            {unread.map(({ statement }) => (
              <li key={statement!.id}>{`${statement!.code} ${statement!.text}`.trim()}</li>
            ))}
          </ul>
          {clips.length > 0 && <p class="soft">{t('readTickHint')}</p>}
        </section>
      )}
    </div>
  );
}

const isExplained = ({ clips, also }: ReadingGroup): boolean => clips.length + also.length > 0;

const nothing = () => Promise.resolve();

/** Own words are there, they are not the passage's, and nothing is unclear. */
export const isUnderstood = ({ unclear, text, ownWords }: Clip): boolean => !unclear && isOwn(text, ownWords);
