import { useState } from 'preact/hooks';
import { dayInWords } from '#lib/exchange/reference.ts';
import type { Lesson } from '#lib/model/lesson.ts';
import type { Topic } from '#lib/model/topic.ts';
import { changeLesson } from '#lib/store/actions/lessons.ts';
import { useDeck } from '../../deck/deck-context.tsx';
import { useAction } from '../../deck/use-action.ts';
import { Trouble } from '../../parts/trouble.tsx';
import { t } from '../../text.ts';
import { DeleteButton } from '../delete-button.tsx';
import { EditForm } from '../item-list.tsx';
import { KIND_NAMES, type LessonDraft, LessonFields } from './lesson-fields.tsx';

interface ListProps {
  lessons: Lesson[];
  /** Topics that one may be moved to. */
  topics: Topic[];
}

/** Lessons, sheets and homework, each with a box for whether the student has it. */
export function LessonList({ lessons, topics }: ListProps) {
  return (
    <ul class="items">
      {lessons.map((lesson) => (
        <LessonRow key={lesson.id} lesson={lesson} topics={topics} />
      ))}
    </ul>
  );
}

function LessonRow({ lesson, topics }: { lesson: Lesson; topics: Topic[] }) {
  const [editing, setEditing] = useState(false);
  if (editing) return <EditLesson lesson={lesson} topics={topics} done={() => setEditing(false)} />;
  return (
    <li>
      <div class="row spread">
        <Held lesson={lesson} />
        <span class="row actions">
          <button class="plain" onClick={() => setEditing(true)} aria-label={t('editNamed', lesson.title)}>
            {t('edit')}
          </button>
          <DeleteButton store="lessons" id={lesson.id} name={lesson.title} />
        </span>
      </div>
      {!lesson.held && wantedText(lesson) !== '' && <p class="soft wrap">{wantedText(lesson)}</p>}
    </li>
  );
}

/** The box that says whether the student has it. */
export function Held({ lesson }: { lesson: Lesson }) {
  const db = useDeck();
  const action = useAction();
  return (
    <>
      <label class="check">
        <input
          type="checkbox"
          checked={lesson.held}
          disabled={action.busy}
          onChange={(event) => {
            const held = event.currentTarget.checked;
            void action.run(() => changeLesson(db, lesson.id, { held }, Date.now()));
          }}
        />
        <span class="wrap">{lessonName(lesson)}</span>
      </label>
      <Trouble text={action.trouble} />
    </>
  );
}

/** Its kind and title, as in "Homework: Orbits". */
export const lessonName = ({ kind, title }: Lesson): string => t('lessonNamed', t(KIND_NAMES[kind]), title);

/** From whom and by when it is wanted, as far as that is known. */
export const wantedText = ({ wantedFrom, wantedBy }: Lesson): string =>
  [
    wantedFrom && t('lessonWantedFrom', wantedFrom),
    wantedBy !== null && t('lessonWantedBy', dayInWords(wantedBy)),
  ]
    .filter(Boolean)
    .join(', ');

function EditLesson({ lesson, topics, done }: { lesson: Lesson; topics: Topic[]; done(): void }) {
  const db = useDeck();
  const { topicId, kind, title, held, wantedFrom, wantedBy } = lesson;
  const [draft, setDraft] = useState<LessonDraft>({ topicId, kind, title, held, wantedFrom, wantedBy });
  return (
    <EditForm save={() => changeLesson(db, lesson.id, draft, Date.now())} done={done}>
      <LessonFields draft={draft} set={setDraft} topics={topics} />
    </EditForm>
  );
}
