import { useMemo, useState } from 'preact/hooks';
import { type Line, type Question, isAsked } from '#lib/model/item.ts';
import { suggestedQuestion } from '#lib/notes/lines/suggested-question.ts';
import { Words } from '../../parts/words.tsx';
import { t } from '../../text.ts';
import { statementsOf } from '../statement-ticks.tsx';
import { WriteQuestion } from '../write-item.tsx';
import type { OutlineEditor } from './outline-editor.ts';
import type { CourseNotes } from './use-notes.ts';

interface LineToolsProps {
  line: Line;
  questions: readonly Question[];
  editor: OutlineEditor;
  notes: CourseNotes;
}

/** What can be done with the line in hand, by mouse and by those keys that every page knows. */
export function LineTools({ line, questions, editor, notes }: LineToolsProps) {
  const { typed } = editor;
  const isParted = isAsked({ ...line, leftOut: null });
  /** Pressed by mouse, a button leaves the caret in the line. */
  const tool = (work: () => void) => ({
    class: 'plain',
    onMouseDown: (event: Event) => event.preventDefault(),
    onClick: work,
  });
  const caret = () => document.querySelector<HTMLTextAreaElement>('.line-field textarea')?.selectionEnd ?? 0;
  return (
    <div class="line-tools">
      <div class="row" role="group" aria-label={t('notesTools')}>
        <button {...tool(() => editor.endLead(caret()))} id={`tools-${line.id}`}>
          {t('notesEndLead')}
        </button>
        <button {...tool(() => editor.moveOut())} aria-label={t('notesMoveOut')} title={t('notesMoveOut')}>
          ←
        </button>
        <button {...tool(() => editor.moveIn())} aria-label={t('notesMoveIn')} title={t('notesMoveIn')}>
          →
        </button>
        <button
          {...tool(() => editor.movePast('up', caret()))}
          aria-label={t('notesMoveUp')}
          title={t('notesMoveUp')}
        >
          ↑
        </button>
        <button
          {...tool(() => editor.movePast('down', caret()))}
          aria-label={t('notesMoveDown')}
          title={t('notesMoveDown')}
        >
          ↓
        </button>
        {line.leftOut ? (
          <button {...tool(() => editor.leaveOut(line.id, null))}>{t('takeBackIn')}</button>
        ) : (
          <>
            <button {...tool(() => editor.leaveOut(line.id, 'known'))}>{t('leftOutKnown')}</button>
            <button {...tool(() => editor.leaveOut(line.id, 'offSyllabus'))}>{t('leftOutOff')}</button>
          </>
        )}
        <button {...tool(() => editor.remove(line.id))}>{t('delete')}</button>
      </div>
      {!isParted && (typed?.text ?? '') !== '' && <p class="soft">{t('notesNotAsked')}</p>}
      {line.pictureIds.map((id, place) => (
        <button key={id} {...tool(() => editor.setPictures(line.id, line.pictureIds.toSpliced(place, 1)))}>
          {t('notesPictureAway', place + 1)}
        </button>
      ))}
      <QuestionsBeside line={line} questions={questions} notes={notes} />
    </div>
  );
}

/** The questions beside a line, and the one that it suggests. */
function QuestionsBeside({ line, questions, notes }: Omit<LineToolsProps, 'editor'>) {
  const [isOpen, setOpen] = useState(false);
  const suggested = useMemo(() => suggestedQuestion(line), [line]);
  const { course, statements } = notes;
  const place = {
    courseId: course.id,
    topicId: line.topicId,
    clipId: line.clipId,
    lineId: line.id,
    statements: statementsOf(statements, line.topicId),
    ticked: line.statementIds,
  };
  return (
    <>
      {questions.map(({ id, prompt }) => (
        <p class="soft wrap" key={id}>
          {t('notesQuestionBeside')} <Words text={prompt} />
        </p>
      ))}
      {suggested && !isOpen && (
        <p class="row">
          {questions.length === 0 && (
            <span class="soft wrap">
              {t('notesSuggests')} <Words text={suggested.prompt} />
            </span>
          )}
          <button class="plain" onClick={() => setOpen(true)}>
            {t('notesWriteQuestion')}
          </button>
        </p>
      )}
      {isOpen && (
        <WriteQuestion
          place={place}
          draft={questions.length === 0 ? suggested : null}
          questions={notes.questions}
          done={() => setOpen(false)}
        />
      )}
    </>
  );
}
