import type { Id } from '#lib/model/basics.ts';
import { NEW_TOPIC } from '#lib/model/topic.ts';
import { matchRows } from '#lib/syllabus/match-rows.ts';
import { rowsOf } from '#lib/syllabus/rows-of.ts';
import type { CoursePack } from './course-pack.ts';
import type { PackedRows } from './save-pack.ts';

/** Ids of a pack, each with the id that the same thing has in the deck; what is not in it has the same id in both. */
export type PackIds = Readonly<Record<Id, Id>>;

/**
 * Which of a pack's topics and statements a course has already, though it was begun without the pack: known by code and
 * text, as a newer version of a syllabus is (see matchRows).
 */
export function matchPack(
  { course, topics, statements }: Pick<PackedRows, 'course' | 'topics' | 'statements'>,
  pack: CoursePack,
): PackIds {
  const kept = { courseId: pack.course.id, createdAt: 0, changedAt: 0 };
  const rows = rowsOf({
    topics: pack.topics.map((topic) => ({ ...topic, ...kept, ...NEW_TOPIC })),
    statements: pack.statements.map((statement) => ({ ...statement, ...kept })),
  });
  const found = matchRows(rows, { topics, statements });
  const ids: Record<Id, Id> = { [pack.course.id]: course.id };
  rows.forEach(({ id }, i) => {
    const same = found[i]?.id;
    if (id !== undefined && same !== undefined) ids[id] = same;
  });
  return ids;
}

/** A pack under the ids of the deck. */
export function withIds(pack: CoursePack, ids: PackIds): CoursePack {
  const idOf = (id: Id): Id => (Object.hasOwn(ids, id) ? ids[id]! : id);
  const under = <T extends { topicId: Id }>(row: T): T => ({ ...row, topicId: idOf(row.topicId) });
  return {
    ...pack,
    course: { ...pack.course, id: idOf(pack.course.id) },
    topics: pack.topics.map((topic) => ({
      ...topic,
      id: idOf(topic.id),
      parentId: topic.parentId === null ? null : idOf(topic.parentId),
    })),
    statements: pack.statements.map((row) => under({ ...row, id: idOf(row.id) })),
    questions: pack.questions.map((row) =>
      under({ ...row, statementIds: row.statementIds.map((id) => idOf(id)) }),
    ),
    lessons: pack.lessons.map(under),
  };
}
