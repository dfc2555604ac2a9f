import { useId } from 'preact/hooks';
import type { Course } from '#lib/model/course.ts';
import { t } from '../text.ts';

interface CourseFieldsProps {
  name: string;
  examDay: string | null;
  setName(name: string): void;
  setExamDay(day: string | null): void;
}

/** A course's name and exam day. */
export function CourseFields({ name, examDay, setName, setExamDay }: CourseFieldsProps) {
  const id = useId();
  return (
    <>
      <div class="field">
        <label for={`${id}-name`}>{t('courseName')}</label>
        <input
          id={`${id}-name`}
          required
          maxLength={200}
          autocomplete="off"
          value={name}
          onInput={(event) => setName(event.currentTarget.value)}
        />
      </div>
      <div class="field">
        <label for={`${id}-day`}>{t('examDay')}</label>
        <input
          id={`${id}-day`}
          type="date"
          value={examDay ?? ''}
          aria-describedby={`${id}-hint`}
          onInput={(event) => setExamDay(event.currentTarget.value || null)}
        />
        <p id={`${id}-hint`} class="soft">
          {t('examDayHint')}
        </p>
      </div>
    </>
  );
}

type Targets = Pick<Course, 'targetSides' | 'targetQuestions'>;

/** How many sides of notes and how many questions the course aims at. */
export function TargetFields({ targets, set }: { targets: Targets; set(targets: Targets): void }) {
  const id = useId();
  const field = (name: keyof Targets, label: string, most: number) => (
    <div class="field grow">
      <label for={`${id}-${name}`}>{label}</label>
      <input
        id={`${id}-${name}`}
        type="number"
        min={1}
        max={most}
        step={1}
        required
        value={targets[name]}
        onInput={(event) => set({ ...targets, [name]: event.currentTarget.valueAsNumber })}
      />
    </div>
  );
  return (
    <>
      <div class="row-fields">
        {field('targetSides', t('targetSides'), 100)}
        {field('targetQuestions', t('targetQuestions'), 2000)}
      </div>
      <p class="soft">{t('targetsHint')}</p>
    </>
  );
}
