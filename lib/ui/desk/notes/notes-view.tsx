import { useMemo } from 'preact/hooks';
import { type TopicBalance, balanceOf } from '#lib/notes/balance.ts';
import { examShares } from '#lib/syllabus/tree.ts';
import { topicNames } from '../../parts/topic-name.ts';
import { percent, t } from '../../text.ts';
import { linkTo } from '../route.ts';
import { CountLine, sidesText } from './count-line.tsx';
import { UndoRedo, useUndo } from './undo-redo.tsx';
import { useLiveCount } from './use-live-count.ts';
import type { CourseNotes } from './use-notes.ts';

/** The notes of a course: how long they are, topic by topic, against what each topic's share of the exam would give it. */
export function NotesView({ notes }: { notes: CourseNotes }) {
  const { course, topics, questions, clips } = notes;
  const { now } = useLiveCount(notes, null);
  const undoing = useUndo(nothing);
  const shares = useMemo(() => examShares(topics), [topics]);
  const names = useMemo(() => topicNames(topics), [topics]);
  const asked = useMemo(() => {
    const groups = Map.groupBy(questions, ({ topicId }) => topicId);
    return new Map([...groups].map(([id, all]) => [id, all.length]));
  }, [questions]);
  const rows = balanceOf(course, shares, now?.byTopic ?? new Map(), asked);
  const unclear = clips.filter((clip) => clip.unclear).length;
  return (
    <div class="stack">
      <h1>{t('pageNotes')}</h1>
      <div class="row spread">
        <CountLine notes={notes} now={now} />
        <UndoRedo undoing={undoing} />
      </div>
      <p class="row">
        <a class="button" href={linkTo('print')}>
          {t('printLink')}
        </a>
        <a href={linkTo('course')}>{t('notesTargets')}</a>
      </p>
      {unclear > 0 && <p class="remark">{t('notesUnclear', unclear)}</p>}
      <div class="sheet wide-table" tabIndex={0} role="region" aria-label={t('notesByTopic')}>
        <table class="notes-table">
          <caption class="unseen">{t('notesByTopic')}</caption>
          <thead>
            <tr>
              <th scope="col">{t('topic')}</th>
              <th scope="col">{t('notesWork')}</th>
              <th scope="col">{t('notesShare')}</th>
              <th scope="col">{t('notesSidesHead')}</th>
              <th scope="col">{t('notesQuestionsHead')}</th>
              <th scope="col">{t('notesVerdict')}</th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <Row key={row.topicId} row={row} name={names(row.topicId)} share={shares.get(row.topicId)!} />
            ))}
          </tbody>
        </table>
      </div>
    </div>
  );
}

const nothing = () => Promise.resolve();

const VERDICTS = {
  much: () => t('notesMuch'),
  little: () => t('notesLittle'),
  even: () => '',
} as const satisfies Record<TopicBalance['verdict'], () => string>;

function Row({ row, name, share }: { row: TopicBalance; name: string; share: number }) {
  const { topicId, sides, sidesDue, questions, questionsDue, verdict } = row;
  return (
    <tr>
      <th scope="row">{name}</th>
      <td>
        <a href={linkTo(`read/${topicId}`)} aria-label={t('readTopicNamed', name)}>
          {t('readTopic')}
        </a>{' '}
        <a href={linkTo(`condense/${topicId}`)} aria-label={t('condenseTopicNamed', name)}>
          {t('condenseTopic')}
        </a>
      </td>
      <td>{percent(share)}</td>
      <td>{t('notesOfDue', sidesText(sides), sidesText(sidesDue))}</td>
      <td>{t('notesOfDue', questions, Math.round(questionsDue))}</td>
      <td class={verdict === 'even' ? '' : 'verdict'}>{VERDICTS[verdict]()}</td>
    </tr>
  );
}
