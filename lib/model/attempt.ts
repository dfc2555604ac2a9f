import { z } from 'zod';
import { Id, Millis } from './basics.ts';
import { ItemKind } from './item.ts';
import { RoundOrder } from './round-order.ts';

/** One recall of a question or line, with its marks. An append-only fact: never changed, never derived. */
export const Attempt = z
  .object({
    id: Id,
    courseId: Id,
    /** The topic it stood under at the time. */
    topicId: Id,
    itemKind: ItemKind,
    itemId: Id,
    roundId: Id,
    /** When it was marked. */
    at: Millis,
    /** From shown to marked, in seconds. */
    seconds: z.number().nonnegative().max(86_400),
    marks: z.number().nonnegative().multipleOf(0.5),
    outOf: z.number().int().min(1).max(20),
    /** What the student typed; empty when answered in mind. */
    typed: z.string().max(20_000),
    /** The order in which its round went; null where that was not recorded. */
    order: RoundOrder.nullable(),
    /** Asked from the answer's side. */
    turned: z.boolean(),
  })
  .refine((a) => a.marks <= a.outOf, { message: 'more marks than there are' });
export type Attempt = z.infer<typeof Attempt>;

/** How an answer is judged, everywhere. */
export type Judgement = 'full' | 'part' | 'none';

/** The judgement that n of N marks amount to. */
export function judgementOf(attempt: Pick<Attempt, 'marks' | 'outOf'>): Judgement {
  if (attempt.marks >= attempt.outOf) return 'full';
  return attempt.marks > 0 ? 'part' : 'none';
}
