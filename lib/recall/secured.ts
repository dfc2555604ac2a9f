import type { Attempt } from '#lib/model/attempt.ts';
import type { Item } from '#lib/model/item.ts';
import { BACK_TO_FRONT, FORWARD, type FullMarks, fullMarksOf } from './full-marks.ts';

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

/** The calendar day, in the student's zone, of a moment in epoch ms. */
export type DayOf = (at: number) => string;

/** What counts of the attempts at one item: part of its memory. */
export interface Recalls {
  /** Epoch ms, oldest first; moments before the first attempt (the item's writing) may come before. */
  at: readonly number[];
  /** Of each attempt. */
  full: readonly FullMarks[];
}

/** The same from attempts at one item, in any order. */
export function recallsOf(attempts: readonly Pick<Attempt, 'at' | 'marks' | 'outOf' | 'order'>[]): Recalls {
  const inOrder = attempts.toSorted((a, b) => a.at - b.at);
  return { at: inOrder.map(({ at }) => at), full: inOrder.map((attempt) => fullMarksOf(attempt)) };
}

/** What an item lacks to be secured. */
export interface Lack {
  /** Further days with full marks, 0 to DAYS_TO_SECURE. */
  days: number;
  /** Full marks at the latest attempt. */
  latest: boolean;
  /** A line's full marks as the notes stand, and back to front. */
  forward: boolean;
  backToFront: boolean;
  /** A chance on exam day of at least the threshold. */
  chance: boolean;
}

/** Days with full marks that are still to come, 0 to DAYS_TO_SECURE. */
export function daysLacking({ at, full }: Recalls, dayOf: DayOf): number {
  const days = new Set<string>();
  const first = at.length - full.length;
  for (let i = 0; i < full.length && days.size < DAYS_TO_SECURE; i++)
    if (full[i] !== 0) days.add(dayOf(at[first + i]!));
  return DAYS_TO_SECURE - days.size;
}

/**
 * What an item lacks to be secured: full marks on DAYS_TO_SECURE separate days, full marks at the latest attempt (of
 * several at the latest moment all must be full), and a predicted chance on exam day of at least the threshold. A
 * line's full marks must include both directions, so that it does not lean on the line before it.
 * @param chanceExam chance of full marks on exam day, 0 to 1
 */
export function lackOf(
  { kind }: Pick<Item, 'kind'>,
  recalls: Recalls,
  chanceExam: number,
  dayOf: DayOf,
  threshold = CHANCE_TO_SECURE,
): Lack {
  const lacks = (direction: FullMarks) =>
    kind === 'line' && !recalls.full.some((full) => (full & direction) !== 0);
  return {
    days: daysLacking(recalls, dayOf),
    latest: !endsFull(recalls),
    forward: lacks(FORWARD),
    backToFront: lacks(BACK_TO_FRONT),
    chance: chanceExam < threshold,
  };
}

/** Whether an item is secured: it lacks nothing. */
export function isSecured(
  item: Pick<Item, 'kind'>,
  recalls: Recalls,
  chanceExam: number,
  dayOf: DayOf,
  threshold = CHANCE_TO_SECURE,
): boolean {
  // Most items fall short of the chance, and days take long to tell.
  if (chanceExam < threshold || recalls.full.length < DAYS_TO_SECURE) return false;
  const { days, latest, forward, backToFront } = lackOf(item, recalls, chanceExam, dayOf, threshold);
  return days === 0 && !latest && !forward && !backToFront;
}

function endsFull({ at, full }: Recalls): boolean {
  const first = at.length - full.length;
  return full.every((one, i) => one !== 0 || at[first + i]! < at.at(-1)!);
}
