import { Line, NEW_LINE } from '#lib/model/item.ts';
import type { StepName } from '#lib/model/step.ts';
import { StudentError } from '#lib/model/student-error.ts';
import { writeStep } from '../steps.ts';
import type { Db } from '../schema.ts';
import { type WriteTransaction, checked } from '../write.ts';

/** What the outline may change of a line. */
export type LineChange = Pick<Line, 'id'> &
  Partial<
    Pick<Line, 'lead' | 'rest' | 'order' | 'depth' | 'leftOut' | 'pictureIds' | 'statementIds' | 'topicId'>
  >;

/** A line that the outline begins. */
export type LineDraft = Pick<Line, 'id' | 'courseId' | 'topicId' | 'clipId' | 'lead' | 'rest' | 'order'> &
  Partial<Pick<Line, keyof typeof NEW_LINE>>;

/** One action in the outline. */
export interface LineEdit {
  name: StepName;
  /** The run of typing that it belongs to. */
  joins?: string;
  change?: readonly LineChange[];
  add?: readonly LineDraft[];
  remove?: readonly string[];
}

/**
 * Carries out one action in the outline, whole. What is removed goes among the rows set aside.
 * Errors: StudentError `errorItemGone` where a line to be changed is not there any more.
 * @param at epoch ms
 */
export async function editLines(db: Db, edit: LineEdit, at: number): Promise<void> {
  const { name, joins = '', remove = [] } = edit;
  const step = { name, joins, at };
  if (remove.length === 0)
    return writeStep(db, step, ['lines', 'nextUp'], (transaction) => put(transaction, edit, at));
  await writeStep(db, step, ['lines', 'nextUp', 'setAside'], async (transaction) => {
    await put(transaction as unknown as Transaction, edit, at);
    const lines = transaction.objectStore('lines');
    for (const id of remove) {
      const row = await lines.get(id);
      if (row === undefined) continue;
      await lines.delete(id);
      // An empty line that is taken away is no loss.
      if (row.lead !== '' || row.rest !== '')
        await transaction
          .objectStore('setAside')
          .add({ store: 'lines', row, why: 'deleted', problem: '', at });
    }
  });
}

type Transaction = WriteTransaction<'lines' | 'nextUp'>;

async function put(transaction: Transaction, { change = [], add = [] }: LineEdit, at: number): Promise<void> {
  const lines = transaction.objectStore('lines');
  for (const { id, ...fields } of change) {
    const line = Line.safeParse(await lines.get(id));
    if (!line.success) throw new StudentError('errorItemGone');
    await lines.put(checked('lines', { ...line.data, ...fields, changedAt: at }));
  }
  for (const line of add)
    await lines.add(checked('lines', { ...NEW_LINE, ...line, createdAt: at, changedAt: at }));
  await transaction.objectStore('nextUp').clear();
}
