import { type Attempt, judgementOf } from '#lib/model/attempt.ts';
import type { RoundOrder } from '#lib/model/round-order.ts';

/** The directions in which an item was recalled with full marks, added up: 0 where the marks were not full. */
export type FullMarks = number;

export const FORWARD: FullMarks = 1;
export const BACK_TO_FRONT: FullMarks = 2;
export const BOTH: FullMarks = FORWARD | BACK_TO_FRONT;

/**
 * What full marks in a round of an order count for. What gains most and out of order leave no sequence to lean on, so
 * they count for both. Where the order was not recorded the notes may have been gone through as they stand.
 */
const COUNTS_FOR: Record<RoundOrder, FullMarks> = {
  forward: FORWARD,
  backToFront: BACK_TO_FRONT,
  gain: BOTH,
  outOfOrder: BOTH,
};

/** What an attempt counts for. */
export function fullMarksOf(attempt: Pick<Attempt, 'marks' | 'outOf' | 'order'>): FullMarks {
  if (judgementOf(attempt) !== 'full') return 0;
  return attempt.order === null ? FORWARD : COUNTS_FOR[attempt.order];
}
