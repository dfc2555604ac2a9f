import { type Line, NEW_LINE, type Question } from '#lib/model/item.ts';
import type { Db } from '../schema.ts';
import { ROWS } from '../schema.ts';
import { StudentError } from '#lib/model/student-error.ts';
import { writeStep } from '../steps.ts';
import { checked } from '../write.ts';

/** Fields of a new row, apart from those that have a first value. */
type Fields<T extends Question | Line, First extends keyof T> = Omit<
  T,
  'id' | 'createdAt' | 'changedAt' | First
> &
  Partial<Pick<T, First>>;
type NewQuestion = Fields<Question, 'statementIds' | 'lineId'>;
type NewLine = Omit<Fields<Line, keyof typeof NEW_LINE>, 'order'>;

/** Adds a question. */
export async function addQuestion(db: Db, fields: NewQuestion, at: number): Promise<Question> {
  const question = checked('questions', {
    statementIds: [],
    lineId: null,
    ...fields,
    id: crypto.randomUUID(),
    createdAt: at,
    changedAt: at,
  });
  await writeStep(db, { name: 'addQuestion', at }, ['questions', 'nextUp'], async (transaction) => {
    await transaction.objectStore('questions').add(question);
    await transaction.objectStore('nextUp').delete(question.courseId);
  });
  return question;
}

/** Adds a note line, after the last one of its course. */
export async function addLine(db: Db, fields: NewLine, at: number): Promise<Line> {
  return writeStep(db, { name: 'addLine', at }, ['lines', 'nextUp'], async (transaction) => {
    const lines = transaction.objectStore('lines');
    const before = await lines.index('course').getAll(fields.courseId);
    const order = before.reduce((next, line) => Math.max(next, line.order + 1), 0);
    const line = checked('lines', {
      ...NEW_LINE,
      ...fields,
      order,
      id: crypto.randomUUID(),
      createdAt: at,
      changedAt: at,
    });
    await lines.add(line);
    await transaction.objectStore('nextUp').delete(line.courseId);
    return line;
  });
}

/** Changes the text, marks, topic or statements of a question. */
export async function changeQuestion(
  db: Db,
  id: string,
  change: Partial<Pick<Question, 'prompt' | 'answer' | 'marks' | 'topicId' | 'statementIds' | 'lineId'>>,
  at: number,
): Promise<void> {
  await writeStep(db, { name: 'changeQuestion', at }, ['questions', 'nextUp'], async (transaction) => {
    const row = ROWS.questions.safeParse(await transaction.objectStore('questions').get(id));
    if (!row.success) throw new StudentError('errorItemGone');
    await transaction
      .objectStore('questions')
      .put(checked('questions', { ...row.data, ...change, changedAt: at }));
    await transaction.objectStore('nextUp').delete(row.data.courseId);
  });
}

/** Changes the text, topic or statements of a line. */
export async function changeLine(
  db: Db,
  id: string,
  change: Partial<Pick<Line, 'lead' | 'rest' | 'topicId' | 'statementIds'>>,
  at: number,
): Promise<void> {
  await writeStep(db, { name: 'changeLine', at }, ['lines', 'nextUp'], async (transaction) => {
    const row = ROWS.lines.safeParse(await transaction.objectStore('lines').get(id));
    if (!row.success) throw new StudentError('errorItemGone');
    await transaction.objectStore('lines').put(checked('lines', { ...row.data, ...change, changedAt: at }));
    await transaction.objectStore('nextUp').delete(row.data.courseId);
  });
}
