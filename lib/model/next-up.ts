import { z } from 'zod';
import { Id, Millis } from './basics.ts';
import { type Item, ItemKind } from './item.ts';

/** The numbers by which an item was chosen, for the sentence that says why. */
export const Reason = z.object({
  /** Marks of an exam of 100 that it stands for. */
  examMarks: z.number(),
  /** Chance of full marks at the moment aimed at, 0 to 1, if it is left out now, and if it is asked. */
  chanceIfLeft: z.number(),
  chanceIfAsked: z.number(),
  /** Expected length of the attempt. */
  seconds: z.number(),
  /** The moment aimed at: the exam, or a month ahead where its day is unknown or past. */
  aimAt: Millis,
  isForExam: z.boolean(),
});
export type Reason = z.infer<typeof Reason>;

/** A cache: what gains most now in a course, best first, so that the popup can open on it. Can be thrown away. */
export const NextUp = z.object({
  courseId: Id,
  /** The moment that it was worked out for: attempts made since are not counted in. */
  at: Millis,
  items: z.array(z.object({ kind: ItemKind, id: Id, reason: Reason })).max(60),
});
export type NextUp = z.infer<typeof NextUp>;

/** An item that is about to be asked, and why. */
export interface Upcoming {
  item: Item;
  reason: Reason;
}
