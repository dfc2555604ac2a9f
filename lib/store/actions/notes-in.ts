import { type Line, NEW_LINE } from '#lib/model/item.ts';
import type { Db } from '../schema.ts';
import { writeStep } from '../steps.ts';
import { checked } from '../write.ts';

/** A line as a file has it, with the topic that it is for. */
export type LineIn = Pick<Line, 'topicId' | 'lead' | 'rest' | 'depth' | 'pictureIds'>;

/**
 * Adds lines to a course's notes, after those that are there, in their order. Pictures that the course does not have
 * are left out.
 *
 * @param at epoch milliseconds
 */
export async function addLines(
  db: Db,
  courseId: string,
  lines: readonly LineIn[],
  at: number,
): Promise<Line[]> {
  return writeStep(db, { name: 'addNotes', at }, ['lines', 'pictures', 'nextUp'], async (transaction) => {
    const store = transaction.objectStore('lines');
    const before = await store.index('course').getAll(courseId);
    const pictures = new Set(await transaction.objectStore('pictures').index('course').getAllKeys(courseId));
    const first = before.reduce((next, { order }) => Math.max(next, order + 1), 0);
    const added: Line[] = [];
    for (const [i, line] of lines.entries()) {
      const row = checked('lines', {
        ...NEW_LINE,
        ...line,
        pictureIds: line.pictureIds.filter((id) => pictures.has(id)),
        courseId,
        clipId: null,
        order: first + i,
        id: crypto.randomUUID(),
        createdAt: at,
        changedAt: at,
      });
      await store.add(row);
      added.push(row);
    }
    await transaction.objectStore('nextUp').delete(courseId);
    return added;
  });
}
