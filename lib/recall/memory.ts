import type { Attempt } from '#lib/model/attempt.ts';
import { decayAfter, LEAST_AGE } from './activation.ts';
import { type FullMarks, fullMarksOf } from './full-marks.ts';
import { addTrial, type Evidence, meanChance, noEvidence, weightsOf } from './offset.ts';
import type { StudyClock } from './study-time.ts';

/** What memory needs of an attempt. */
export type Recalled = Pick<Attempt, 'id' | 'at' | 'marks' | 'outOf' | 'seconds' | 'order'>;

/** An item as far as memory goes. */
export interface Written {
  /** When it was written, epoch ms. */
  createdAt: number;
}

/**
 * The state of one item, derived from its attempts: plain data that may be cached and thrown away. It stays true
 * until an attempt at the item is added (withAttempt), or one at any item of the course that is dated before the
 * latest presentation of this one. Its arrays are never written to.
 */
export interface ItemMemory {
  /** Moments (epoch ms) at which the item was seen with its answer, oldest first: its writing, then each attempt. */
  at: readonly number[];
  /** The same moments in model time; see study-time.ts. */
  modelAt: readonly number[];
  /** How fast each presentation fades. */
  decays: readonly number[];
  /** What each attempt counts for towards being secured, in the order of its moments; see full-marks.ts. */
  full: readonly FullMarks[];
  /** What is known of the item's offset; see offset.ts. */
  offset: Evidence;
  /** Seconds that the attempts took, shortest first. */
  taken: readonly number[];
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
  const at = [written];
  const modelAt = [clock.seconds(written)];
  const decays = [decayAfter(0)];
  const offset = noEvidence();
  for (const attempt of inOrder) {
    const model = clock.seconds(attempt.at);
    const strength = strengthOf(modelAt, decays, model);
    addTrial(offset, { strength, fraction: attempt.marks / attempt.outOf });
    at.push(attempt.at);
    modelAt.push(model);
    decays.push(decayAfter(strength));
  }
  const taken = inOrder.map((attempt) => attempt.seconds).sort(ascending);
  const full = inOrder.map((attempt) => fullMarksOf(attempt));
  return completed({ at, modelAt, decays, full, offset, taken });
}

/**
 * The memory with one more attempt: the same as worked out from scratch. Null where the attempt is not dated after
 * the latest presentation: then it has to be worked out from scratch.
 * @param clock of the course, with all attempts before this one; it does not matter whether this one is in it
 */
export function withAttempt(memory: ItemMemory, attempt: Recalled, clock: StudyClock): ItemMemory | null {
  const { at, modelAt, decays } = memory;
  if (attempt.at <= at.at(-1)!) return null;
  const model = clock.seconds(attempt.at);
  const strength = strengthOf(modelAt, decays, model);
  const offset = [...memory.offset];
  addTrial(offset, { strength, fraction: attempt.marks / attempt.outOf });
  return completed({
    at: [...at, attempt.at],
    modelAt: [...modelAt, model],
    decays: [...decays, decayAfter(strength)],
    full: [...memory.full, fullMarksOf(attempt)],
    offset,
    taken: [...memory.taken, attempt.seconds].sort(ascending),
  });
}

/** A memory with what follows from its arrays alone. */
export function completed(
  arrays: Pick<ItemMemory, 'at' | 'modelAt' | 'decays' | 'full' | 'offset' | 'taken'>,
): ItemMemory {
  const attempts = arrays.at.length - 1;
  return {
    ...arrays,
    attempts,
    lastAt: attempts > 0 ? arrays.at[attempts]! : null,
    medianSeconds: medianOf(arrays.taken),
  };
}

/** The middle of sorted numbers, the mean of the middle two where they are even in count; null of none. */
function medianOf(sorted: readonly number[]): number | null {
  const upper = sorted[sorted.length >> 1];
  const lower = sorted[(sorted.length - 1) >> 1];
  return upper === undefined || lower === undefined ? null : (lower + upper) / 2;
}

/**
 * Chance of full marks, 0 to 1, at a moment (epoch ms) if nothing is practised between the latest attempt and then.
 * Where part marks were given it is, strictly, the share of the marks to be expected.
 */
export function chanceAt(memory: ItemMemory, clock: StudyClock, at: number): number {
  const { modelAt, decays, offset } = memory;
  return meanChance(weightsOf(offset), strengthOf(modelAt, decays, clock.seconds(at)));
}

/** The strength e^m that presentations have at a moment in model time. */
export function strengthOf(modelAt: readonly number[], decays: readonly number[], moment: number): number {
  let sum = 0;
  for (let i = 0; i < modelAt.length; i++) sum += left(moment - modelAt[i]!, decays[i]!);
  return sum;
}

/** What is left of a presentation at an age in model time: age^-decay, by way of a logarithm, which is quicker. */
export const left = (age: number, decay: number): number =>
  age <= LEAST_AGE ? 1 : Math.exp(-decay * Math.log(age));

const ascending = (a: number, b: number): number => a - b;
