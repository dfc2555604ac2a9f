import type { SidesNow } from './use-live-count.ts';
import type { CourseNotes } from './use-notes.ts';
import { t } from '../../text.ts';

/** A number of sides as it is said: to a tenth. */
export const sidesText = (sides: number): string =>
  sides.toLocaleString(undefined, { maximumFractionDigits: 1, minimumFractionDigits: 1 });

/** How long the notes are, and how many questions there are, against what was aimed at. */
export function CountLine({ notes, now }: { notes: CourseNotes; now: SidesNow | null }) {
  const { course, questions } = notes;
  const isOver = now !== null && now.sides > course.targetSides;
  return (
    <p class="count-line">
      <span class={isOver ? 'over' : ''}>
        {now ? t('notesSides', now.sides, course.targetSides) : t('notesCounting')}
      </span>
      {' · '}
      <span>{t('notesQuestionCount', questions.length, course.targetQuestions)}</span>
    </p>
  );
}
