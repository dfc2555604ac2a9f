import type { Line, Question } from '#lib/model/item.ts';
import { Pictures } from '../../parts/pictures.tsx';
import { FormulaCheck, Words } from '../../parts/words.tsx';
import { t, tn } from '../../text.ts';
import { caretAt } from './caret-at.ts';
import { LineField } from './line-field.tsx';
import { LineTools } from './line-tools.tsx';
import type { OutlineEditor } from './outline-editor.ts';
import type { CourseNotes } from './use-notes.ts';

interface LineRowProps {
  line: Line;
  /** Questions that stand beside it. */
  questions: readonly Question[];
  editor: OutlineEditor;
}

/** A line that is not in hand. A press on it takes it in hand, at the place that was pressed. */
export function LineRow({ line, questions, editor }: LineRowProps) {
  return (
    <li class={`line depth-${line.depth} ${line.leftOut ? 'left-out' : ''}`}>
      <button
        class="line-text"
        id={`line-${line.id}`}
        dir="auto"
        onClick={(event) => editor.enter(line.id, caretAt(event, line))}
      >
        <LineWords line={line} />
      </button>
      {line.leftOut && (
        <span class="soft">{line.leftOut === 'known' ? t('leftOutKnown') : t('leftOutOff')}</span>
      )}
      {questions.length > 0 && <span class="soft">{tn('notesQuestions', questions.length)}</span>}
      {line.pictureIds.length > 0 && <Pictures ids={line.pictureIds} />}
    </li>
  );
}

function LineWords({ line: { lead, rest } }: { line: Line }) {
  if (lead === '' && rest === '') return <span class="soft">{t('notesEmptyLine')}</span>;
  return (
    <>
      <strong>
        <Words text={lead} />
      </strong>{' '}
      <Words text={rest} />
    </>
  );
}

interface LineInHandProps extends LineRowProps {
  notes: CourseNotes;
  helpId: string;
  undo(way: 'undo' | 'redo'): void;
}

/** The line in hand: its field, how its formulas come out, and what can be done with it. */
export function LineInHand({ line, questions, editor, notes, helpId, undo }: LineInHandProps) {
  const { typed, spot } = editor;
  if (!typed || !spot) return null;
  return (
    <li class={`line in-hand depth-${line.depth} ${line.leftOut ? 'left-out' : ''}`}>
      <LineField
        editor={editor}
        typed={typed}
        spot={spot}
        helpId={helpId}
        undo={undo}
        leave={() => document.getElementById(`tools-${line.id}`)?.focus()}
      />
      <FormulaCheck text={typed.text} />
      {line.pictureIds.length > 0 && <Pictures ids={line.pictureIds} />}
      <LineTools line={line} questions={questions} editor={editor} notes={notes} />
    </li>
  );
}
