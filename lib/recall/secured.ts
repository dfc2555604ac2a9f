import { type Attempt, judgementOf } from '#lib/model/attempt.ts';

/**
 * Separate days with full marks that an item needs.
 *
 * After Rawson & Dunlosky (2011), J. Exp. Psychol. General 140(3), 283-302, doi 10.1037/a0023956, who advise recall
 * to a criterion of three correct, then relearning in three spaced sessions. Here it differs: three days with full
 * marks in all, the first learning among them, as attempts come in short rounds; how well it will hold is left to
 * the predicted chance. The spacing of sessions is not in their abstract: that they be days is our choice.
 */
export const DAYS_TO_SECURE = 3;

/** The chance on exam day that an item needs. Our choice. */
export const CHANCE_TO_SECURE = 0.9;

type Judged = Pick<Attempt, 'at' | 'marks' | 'outOf'>;

/** The calendar day, in the student's zone, of a moment in epoch ms. */
export type DayOf = (at: number) => string;

/** On how many separate days the item was recalled with full marks. */
export function fullDays(attempts: readonly Judged[], dayOf: DayOf): number {
  const full = attempts.filter((a) => judgementOf(a) === 'full');
  return new Set(full.map((a) => dayOf(a.at))).size;
}

/**
 * Whether an item is secured: full marks on DAYS_TO_SECURE separate days, full marks at the latest attempt, and a
 * predicted chance on exam day of at least the threshold.
 * @param attempts those at the item, in any order; of several at the latest moment all must be full
 * @param chanceExam chance of full marks on exam day, 0 to 1
 */
export function isSecured(
  attempts: readonly Judged[],
  chanceExam: number,
  dayOf: DayOf,
  threshold = CHANCE_TO_SECURE,
): boolean {
  return chanceExam >= threshold && endsFull(attempts) && fullDays(attempts, dayOf) >= DAYS_TO_SECURE;
}

function endsFull(attempts: readonly Judged[]): boolean {
  const latest = attempts.reduce((last, a) => Math.max(last, a.at), -Infinity);
  return attempts.every((a) => a.at < latest || judgementOf(a) === 'full');
}
