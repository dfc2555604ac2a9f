import type { CoursePack } from '#lib/exchange/course-pack.ts';
import { type PackedDeck } from '#lib/exchange/merge-pack.ts';
import { packOf } from '#lib/exchange/save-pack.ts';
import { MORNING, aCourse, aLesson, aQuestion, aStatement, aTopic } from '../builders.ts';

/** A small course as its teacher has it. */
export function aTaughtCourse(): PackedDeck {
  const course = aCourse();
  const inCourse = { courseId: course.id };
  const waves = aTopic({ ...inCourse, order: 0, code: '1', title: 'Waves' });
  const deep = aTopic({ ...inCourse, order: 1, code: '1.1', title: 'Deep water', parentId: waves.id });
  const tides = aTopic({ ...inCourse, order: 3, code: '2', title: 'Tides', share: 40, unit: 'percent' });
  const statement = aStatement({ ...inCourse, topicId: deep.id, order: 2 });
  return {
    course,
    topics: [waves, deep, tides],
    statements: [statement],
    questions: [
      aQuestion({ ...inCourse, topicId: deep.id, statementIds: [statement.id] }),
      aQuestion({ ...inCourse, topicId: tides.id, prompt: 'What drives the tides?' }),
    ],
    lessons: [aLesson({ ...inCourse, topicId: deep.id, wantedBy: '2026-03-20' })],
    attempted: new Set(),
  };
}

export const packed = (deck: PackedDeck, savedAt = MORNING): CoursePack => packOf(deck, null, savedAt);

/** A deck after a merge, as the store would leave it. */
export function afterMerge(
  deck: PackedDeck | null,
  { course, put, remove }: ReturnType<typeof import('#lib/exchange/merge-pack.ts').mergePack>,
): PackedDeck {
  const rows = <T extends { id: string }>(
    before: readonly T[] = [],
    now: readonly T[],
    out: readonly T[],
  ): T[] => {
    const byId = new Map(before.map((row) => [row.id, row]));
    for (const row of now) byId.set(row.id, row);
    for (const { id } of out) byId.delete(id);
    return [...byId.values()];
  };
  return {
    course,
    topics: rows(deck?.topics, put.topics, []),
    statements: rows(deck?.statements, put.statements, remove.statements),
    questions: rows(deck?.questions, put.questions, remove.questions),
    lessons: rows(deck?.lessons, put.lessons, remove.lessons),
    attempted: deck?.attempted ?? new Set(),
  };
}
