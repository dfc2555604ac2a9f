import { Lesson } from '#lib/model/lesson.ts';
import { StudentError } from '#lib/model/student-error.ts';
import type { Db } from '../schema.ts';
import { writeStep } from '../steps.ts';
import { checked } from '../write.ts';

/** Adds a lesson, sheet or homework that a topic should have. `at` in epoch milliseconds. */
export async function addLesson(
  db: Db,
  fields: Omit<Lesson, 'id' | 'createdAt' | 'changedAt'>,
  at: number,
): Promise<Lesson> {
  const lesson = checked('lessons', { ...fields, id: crypto.randomUUID(), createdAt: at, changedAt: at });
  await writeStep(db, { name: 'addLesson', at }, ['lessons'], (transaction) =>
    transaction.objectStore('lessons').add(lesson),
  );
  return lesson;
}

/** Changes what is known of one, such as that it is held now. `at` in epoch milliseconds. */
export async function changeLesson(
  db: Db,
  id: string,
  change: Partial<Omit<Lesson, 'id' | 'courseId' | 'createdAt' | 'changedAt'>>,
  at: number,
): Promise<void> {
  await writeStep(db, { name: 'changeLesson', at }, ['lessons'], async (transaction) => {
    const row = Lesson.safeParse(await transaction.objectStore('lessons').get(id));
    if (!row.success) throw new StudentError('errorLessonGone');
    await transaction
      .objectStore('lessons')
      .put(checked('lessons', { ...row.data, ...change, changedAt: at }));
  });
}
