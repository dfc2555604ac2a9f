import { Clip } from '#lib/model/clip.ts';
import { Line, Question } from '#lib/model/item.ts';
import { Lesson } from '#lib/model/lesson.ts';
import { StudentError } from '#lib/model/student-error.ts';
import { Topic } from '#lib/model/topic.ts';
import type { Db, StoreName } from '../schema.ts';
import { writeStep } from '../steps.ts';
import { type WriteTransaction, checked } from '../write.ts';

type Movable = 'topics' | 'clips' | 'questions' | 'lines' | 'lessons' | 'nextUp';

/**
 * Puts everything that stands under a topic under another: clips, questions, note lines, and lessons, sheets and homework. Attempts are facts and stay
 * as they are. Rows that cannot be read are left for the reading that sets them aside.
 * Errors: StudentError `errorTopicGone` where the other topic is not in the deck or was dropped.
 *
 * @param at epoch milliseconds
 */
export async function moveContents(db: Db, fromId: string, toId: string, at: number): Promise<void> {
  const stores = ['topics', 'clips', 'questions', 'lines', 'lessons', 'nextUp'] as const;
  await writeStep(db, { name: 'moveTopic', at }, stores, async (transaction) => {
    const to = Topic.safeParse(await transaction.objectStore('topics').get(toId));
    if (!to.success || to.data.dropped) throw new StudentError('errorTopicGone');
    const { courseId } = to.data;
    for (const row of await rowsIn(transaction, 'clips', courseId)) {
      const clip = Clip.safeParse(row).data;
      if (!clip?.topicIds.includes(fromId)) continue;
      const topicIds = [...new Set(clip.topicIds.map((id) => (id === fromId ? toId : id)))];
      await transaction.objectStore('clips').put(checked('clips', { ...clip, topicIds, changedAt: at }));
    }
    for (const row of await rowsIn(transaction, 'questions', courseId)) {
      const question = Question.safeParse(row).data;
      if (question?.topicId !== fromId) continue;
      const moved = { ...question, topicId: toId, changedAt: at };
      await transaction.objectStore('questions').put(checked('questions', moved));
    }
    for (const row of await rowsIn(transaction, 'lines', courseId)) {
      const line = Line.safeParse(row).data;
      if (line?.topicId !== fromId) continue;
      await transaction.objectStore('lines').put(checked('lines', { ...line, topicId: toId, changedAt: at }));
    }
    for (const row of await rowsIn(transaction, 'lessons', courseId)) {
      const lesson = Lesson.safeParse(row).data;
      if (lesson?.topicId !== fromId) continue;
      const moved = { ...lesson, topicId: toId, changedAt: at };
      await transaction.objectStore('lessons').put(checked('lessons', moved));
    }
    await transaction.objectStore('nextUp').delete(courseId);
  });
}

const rowsIn = (
  transaction: WriteTransaction<Movable & StoreName>,
  store: 'clips' | 'questions' | 'lines' | 'lessons',
  courseId: string,
): Promise<unknown[]> => transaction.objectStore(store).index('course').getAll(courseId);
