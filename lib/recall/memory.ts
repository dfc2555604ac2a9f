import type { Attempt } from '#lib/model/attempt.ts';
import { decayAfter, LEAST_AGE, type Presentation, strength } from './activation.ts';
import { meanChance, type Trial, type Weights, weightsAfter } from './offset.ts';
import type { StudyClock } from './study-time.ts';

/** What memory needs of an attempt. */
export type Recalled = Pick<Attempt, 'id' | 'at' | 'marks' | 'outOf' | 'seconds'>;

/** An item as far as memory goes. */
export interface Written {
  /** When it was written, epoch ms. */
  createdAt: number;
}

/**
 * The state of one item, derived from its attempts: plain data that may be cached and thrown away. It stays true
 * until an attempt at the item is added, or one at any item of the course that is dated before `lastAt`.
 */
export interface ItemMemory {
  /** Moments (epoch ms) at which the item was seen with its answer, oldest first, with their decays; at least one. */
  presentations: Presentation[];
  /** What is known of the item's offset; see offset.ts. */
  offset: Weights;
  attempts: number;
  /** The latest attempt, epoch ms; null before the first. */
  lastAt: number | null;
  /** Median seconds from shown to marked; null before the first attempt. */
  medianSeconds: number | null;
}

/**
 * The memory of an item.
 *
 * Writing the item is its first presentation. Each attempt is one more, whatever its marks, since the answer is
 * uncovered in each; a missed one is study. Its marks also weigh in as evidence on how hard the item is.
 *
 * @param attempts those at this item, in any order
 * @param clock of the course, built from these attempts and all others
 */
export function memoryOf(item: Written, attempts: readonly Recalled[], clock: StudyClock): ItemMemory {
  const inOrder = attempts.toSorted((a, b) => a.at - b.at || (a.id < b.id ? -1 : 1));
  const written = Math.min(item.createdAt, inOrder[0]?.at ?? Infinity);
  const seen: Presentation[] = [{ at: clock.seconds(written), decay: decayAfter(0) }];
  const trials: Trial[] = [];
  for (const attempt of inOrder) {
    const at = clock.seconds(attempt.at);
    const before = strength(seen, at);
    trials.push({ m: Math.log(before), fraction: attempt.marks / attempt.outOf });
    seen.push({ at, decay: decayAfter(before) });
  }
  return {
    presentations: seen.map(({ decay }, i) => ({ at: inOrder[i - 1]?.at ?? written, decay })),
    offset: weightsAfter(trials),
    attempts: inOrder.length,
    lastAt: inOrder.at(-1)?.at ?? null,
    medianSeconds: median(inOrder.map((a) => a.seconds)),
  };
}

/**
 * Chance of full marks, 0 to 1, at a moment (epoch ms) if nothing is practised between the latest attempt and then.
 * Where part marks were given it is, strictly, the share of the marks to be expected.
 */
export function chanceAt(memory: ItemMemory, clock: StudyClock, at: number): number {
  return meanChance(memory.offset, Math.log(strengthAt(memory, clock, at)));
}

/** What one more attempt at `now` would do to the chance at `later` (both epoch ms). */
export interface Forecast {
  chanceNow: number;
  /** Chance at `later` without the attempt. */
  without: number;
  /** Chance at `later` with it: never lower. It is the mean over how the attempt may go; see offset.ts. */
  withOne: number;
}

/** Forecast what one attempt now does for a later moment; with `later` before `now`, as if it were `now`. */
export function forecast(memory: ItemMemory, clock: StudyClock, now: number, later: number): Forecast {
  const end = Math.max(now, later);
  const strengthNow = strengthAt(memory, clock, now);
  const without = strengthAt(memory, clock, end);
  const added = clock.age(now, end) ** -decayAfter(strengthNow);
  const chance = (sum: number): number => meanChance(memory.offset, Math.log(sum));
  return { chanceNow: chance(strengthNow), without: chance(without), withOne: chance(without + added) };
}

function strengthAt(memory: ItemMemory, clock: StudyClock, at: number): number {
  const moment = clock.seconds(at);
  let sum = 0;
  for (const one of memory.presentations) {
    sum += Math.max(LEAST_AGE, moment - clock.seconds(one.at)) ** -one.decay;
  }
  return sum;
}

/** The middle of the numbers, the mean of the middle two where they are even in count; null of none. */
function median(numbers: readonly number[]): number | null {
  const sorted = numbers.toSorted((a, b) => a - b);
  const upper = sorted[sorted.length >> 1];
  const lower = sorted[(sorted.length - 1) >> 1];
  return upper === undefined || lower === undefined ? null : (lower + upper) / 2;
}
