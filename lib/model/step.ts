import { z } from 'zod';
import { Id, Millis } from './basics.ts';

/** What a step is called when it is offered to be undone. */
export const StepName = z.enum([
  'changeLine',
  'addLine',
  'removeLine',
  'moveLine',
  'leaveOut',
  'takeIn',
  'splitLine',
  'joinLines',
  'changeQuestion',
  'addQuestion',
  'changeOwnWords',
  'markUnclear',
  'clearUnclear',
  'tickStatements',
  'placePicture',
  'addNotes',
  'moveTopic',
  'addLesson',
  'changeLesson',
  'delete',
]);
export type StepName = z.infer<typeof StepName>;

/** A row before and after a step; undefined where there was none. */
const RowChange = z.object({
  store: z.string(),
  key: Id,
  before: z.unknown(),
  after: z.unknown(),
});
export type RowChange = z.infer<typeof RowChange>;

/** One action of the student, with what it takes to undo and redo it. */
export const Step = z.object({
  at: Millis,
  name: StepName,
  /** Steps of the same run of typing are one. Empty: this one stands alone. */
  joins: z.string().max(200),
  rows: z.array(RowChange),
  undone: z.boolean(),
});
export type Step = z.infer<typeof Step>;
