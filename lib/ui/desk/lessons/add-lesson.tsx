import { useRef, useState } from 'preact/hooks';
import type { Topic } from '#lib/model/topic.ts';
import { addLesson } from '#lib/store/actions/lessons.ts';
import { useDeck } from '../../deck/deck-context.tsx';
import { useAction } from '../../deck/use-action.ts';
import { Trouble } from '../../parts/trouble.tsx';
import { t } from '../../text.ts';
import { type LessonDraft, LessonFields } from './lesson-fields.tsx';

interface AddLessonProps {
  courseId: string;
  /** Where they go; null where the student chooses among `topics`. */
  topicId: string | null;
  topics: Topic[];
}

const firstDraft = (topicId: string): LessonDraft => ({
  topicId,
  kind: 'lesson',
  title: '',
  held: false,
  wantedFrom: '',
  wantedBy: null,
});

/** The first topic that has none below it: lessons are mostly on one thing. */
const firstLeaf = (topics: Topic[]): string =>
  (topics.find(({ id }) => !topics.some(({ parentId }) => parentId === id)) ?? topics[0])?.id ?? '';

/** Enters lessons, sheets and homework, one after another: Enter adds one, and all but the title stays for the next. */
export function AddLesson({ courseId, topicId, topics }: AddLessonProps) {
  const db = useDeck();
  const action = useAction();
  const [draft, setDraft] = useState(firstDraft(topicId ?? firstLeaf(topics)));
  const [added, setAdded] = useState('');
  const title = useRef<HTMLInputElement>(null);
  const save = async () => {
    if (!(await action.run(() => addLesson(db, { courseId, ...draft }, Date.now())))) return;
    setAdded(draft.title);
    setDraft({ ...draft, title: '' });
    title.current!.focus();
  };
  return (
    <form
      class="stack add-lesson"
      onSubmit={(event) => {
        event.preventDefault();
        void save();
      }}
    >
      <LessonFields draft={draft} set={setDraft} topics={topicId === null ? topics : []} titleRef={title} />
      <Trouble text={action.trouble} />
      <div class="row">
        <button class="main" disabled={action.busy}>
          {t('lessonAdd')}
        </button>
        <span class="soft wrap" role="status">
          {added !== '' && t('lessonAdded', added)}
        </span>
      </div>
    </form>
  );
}
