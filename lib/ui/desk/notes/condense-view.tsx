import { useId, useMemo } from 'preact/hooks';
import { balanceOf } from '#lib/notes/balance.ts';
import { examShares } from '#lib/syllabus/tree.ts';
import { topicName } from '../../parts/topic-name.ts';
import { Still } from '../../parts/still.tsx';
import { Trouble } from '../../parts/trouble.tsx';
import { t } from '../../text.ts';
import { ClipsSide } from './clips-side.tsx';
import { CountLine, sidesText } from './count-line.tsx';
import { LineInHand, LineRow } from './line-row.tsx';
import { TopicSteps } from './topic-steps.tsx';
import { UndoRedo, useUndo } from './undo-redo.tsx';
import { type SidesNow, useLiveCount } from './use-live-count.ts';
import type { CourseNotes } from './use-notes.ts';
import { useOutline } from './use-outline.ts';

/** A topic condensed: its clips on one side, its note lines on the other. */
export function CondenseView({ notes, topicId }: { notes: CourseNotes; topicId: string }) {
  const { course, topics, questions } = notes;
  const topic = topics.find(({ id }) => id === topicId);
  const count = useLiveCount(notes, topicId);
  const rows = useMemo(() => notes.lines.filter((line) => line.topicId === topicId), [notes.lines, topicId]);
  const editor = useOutline({ courseId: course.id, topicId }, rows, count.tell);
  const undoing = useUndo(() => editor.flush());
  const beside = useMemo(() => Map.groupBy(questions, ({ lineId }) => lineId), [questions]);
  const helpId = useId();
  if (!topic) return <h1>{t('topicGone')}</h1>;
  const row = (line: (typeof editor.lines)[number]) => {
    const shared = { line, questions: beside.get(line.id) ?? NONE, editor };
    return line.id === editor.spot?.id ? (
      <LineInHand
        key={line.id}
        {...shared}
        notes={notes}
        helpId={helpId}
        undo={(way) => void undoing.turn(way)}
      />
    ) : (
      <Still key={line.id} of={[line, shared.questions]}>
        {() => <LineRow {...shared} />}
      </Still>
    );
  };
  return (
    <div class="stack condense">
      <h1>{topicName(topic)}</h1>
      <TopicSteps here="condense" topics={topics} topicId={topicId} />
      <div class="count-bar row spread">
        <div>
          <CountLine notes={notes} now={count.now} />
          <TopicCount notes={notes} topicId={topicId} now={count.now} />
        </div>
        <div class="row">
          <UndoRedo undoing={undoing} />
          <SavedSign editor={editor} />
        </div>
      </div>
      <div class="two notes-two">
        <section class="stack" aria-label={t('notesClips')}>
          <h2>{t('notesClips')}</h2>
          <ClipsSide notes={notes} topicId={topicId} editor={editor} />
        </section>
        <section class="sheet stack outline-holder" aria-label={t('notesLines')}>
          <h2>{t('notesLines')}</h2>
          <p class="soft" id={helpId}>
            {t('notesKeys')}
          </p>
          <ol class="note-lines">{editor.lines.map(row)}</ol>
          <div>
            <button onClick={() => editor.add([''])}>{t('notesAddLine')}</button>
          </div>
        </section>
      </div>
    </div>
  );
}

const NONE: never[] = [];

function SavedSign({ editor }: { editor: ReturnType<typeof useOutline> }) {
  const { keeper } = editor;
  if (keeper.trouble !== null)
    return (
      <>
        <Trouble text={keeper.trouble} />
        <button onClick={() => keeper.retry()}>{t('tryAgain')}</button>
      </>
    );
  const isSaved = !keeper.isBusy && !keeper.isWaiting;
  return (
    <span class="soft saved-sign" role="status">
      {isSaved ? t('saved') : t('saving')}
    </span>
  );
}

/** What the topic takes of it, against its share of the exam. */
function TopicCount({ notes, topicId, now }: { notes: CourseNotes; topicId: string; now: SidesNow | null }) {
  const { course, topics, questions } = notes;
  const share = useMemo(() => examShares(topics).get(topicId), [topics, topicId]);
  if (share === undefined || !now) return null;
  const asked = questions.filter((one) => one.topicId === topicId).length;
  const [own] = balanceOf(course, new Map([[topicId, share]]), now.byTopic, new Map([[topicId, asked]]));
  const { sides, sidesDue, questionsDue } = own!;
  return (
    <p class="soft">
      {t('notesTopicCount', sidesText(sides), sidesText(sidesDue), asked, Math.round(questionsDue))}
    </p>
  );
}
