import type { Day } from '#lib/model/basics.ts';
import type { Lesson } from '#lib/model/lesson.ts';

/** Something to chase: a lesson, sheet or homework that is missing. */
export interface Missing {
  lesson: Lesson;
  /** The day by which it was wanted is past. */
  isOverdue: boolean;
}

/**
 * What is missing, in the order in which it is best chased: by the day that it is wanted by, so that what is overdue
 * stands first, then what has no day; within a day in the order of the syllabus, then as it was entered.
 *
 * @param places places of the topics in the syllabus, by id
 * @param today calendar day in the student's zone
 */
export function toChase(
  lessons: readonly Lesson[],
  places: ReadonlyMap<string, number>,
  today: Day,
): Missing[] {
  const place = ({ topicId }: Lesson): number => places.get(topicId) ?? Infinity;
  return lessons
    .filter(({ held, topicId }) => !held && places.has(topicId))
    .toSorted(
      (a, b) => compareDays(a.wantedBy, b.wantedBy) || place(a) - place(b) || a.createdAt - b.createdAt,
    )
    .map((lesson) => ({ lesson, isOverdue: lesson.wantedBy !== null && lesson.wantedBy < today }));
}

/** Days of ISO 8601 sort as text; none comes last. */
function compareDays(a: Day | null, b: Day | null): number {
  if (a === b) return 0;
  if (a === null) return 1;
  if (b === null) return -1;
  return a < b ? -1 : 1;
}

/** From whom something is missing, each once, in alphabetical order; nothing for what names nobody. */
export const peopleIn = (missing: readonly Missing[]): string[] =>
  [...new Set(missing.map(({ lesson }) => lesson.wantedFrom).filter(Boolean))].sort((a, b) =>
    a.localeCompare(b),
  );
