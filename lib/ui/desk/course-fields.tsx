import { useId } from 'preact/hooks';
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
