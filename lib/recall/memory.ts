import type { Attempt } from '#lib/model/attempt.ts';
import { decayAfter, LEAST_AGE } from './activation.ts';
import { type Evidence, meanChance, noEvidence, weightsOf, withTrial } from './offset.ts';
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
 * until an attempt at the item is added (withAttempt), or one at any item of the course that is dated before the
 * latest presentation of this one. Its arrays are never written to.
 */
export interface ItemMemory {
  /** Moments (epoch ms) at which the item was seen with its answer, oldest first: its writing, then each attempt. */
  at: Float64Array;
  /** The same moments in model time; see study-time.ts. */
  modelAt: Float64Array;
  /** How fast each presentation fades. */
  decays: Float64Array;
  /** What is known of the item's offset; see offset.ts. */
  offset: Evidence;
  /** Seconds that the attempts took, shortest first. */
  taken: Float64Array;
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
  const count = inOrder.length + 1;
  const at = new Float64Array(count);
  const modelAt = new Float64Array(count);
  const decays = new Float64Array(count);
  let offset = noEvidence();
  at[0] = Math.min(item.createdAt, inOrder[0]?.at ?? Infinity);
  modelAt[0] = clock.seconds(at[0]);
  decays[0] = decayAfter(0);
  for (const [i, attempt] of inOrder.entries()) {
    const model = clock.seconds(attempt.at);
    const before = strengthOf(modelAt, decays, i + 1, model);
    offset = withTrial(offset, { strength: before, fraction: attempt.marks / attempt.outOf });
    at[i + 1] = attempt.at;
    modelAt[i + 1] = model;
    decays[i + 1] = decayAfter(before);
  }
  return completed({
    at,
    modelAt,
    decays,
    offset,
    taken: Float64Array.from(inOrder, (a) => a.seconds).sort(),
  });
}

/**
 * The memory with one more attempt: the same as worked out from scratch. Null where the attempt is not dated after
 * the latest presentation: then it has to be worked out from scratch.
 * @param clock of the course, with all attempts before this one; it does not matter whether this one is in it
 */
export function withAttempt(memory: ItemMemory, attempt: Recalled, clock: StudyClock): ItemMemory | null {
  const { at, modelAt, decays, offset, taken } = memory;
  if (attempt.at <= at.at(-1)!) return null;
  const model = clock.seconds(attempt.at);
  const before = strengthOf(modelAt, decays, at.length, model);
  return completed({
    at: appended(at, attempt.at),
    modelAt: appended(modelAt, model),
    decays: appended(decays, decayAfter(before)),
    offset: withTrial(offset, { strength: before, fraction: attempt.marks / attempt.outOf }),
    taken: appended(taken, attempt.seconds).sort(),
  });
}

/** A memory with what follows from its arrays alone. */
export function completed(
  arrays: Pick<ItemMemory, 'at' | 'modelAt' | 'decays' | 'offset' | 'taken'>,
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
function medianOf(sorted: Float64Array): number | null {
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
  return meanChance(weightsOf(offset), strengthOf(modelAt, decays, modelAt.length, clock.seconds(at)));
}

/** The strength e^m that the first `count` presentations have at a moment in model time. */
export function strengthOf(
  modelAt: Float64Array,
  decays: Float64Array,
  count: number,
  moment: number,
): number {
  let sum = 0;
  for (let i = 0; i < count; i++) sum += Math.max(LEAST_AGE, moment - modelAt[i]!) ** -decays[i]!;
  return sum;
}

function appended(numbers: Float64Array, one: number): Float64Array {
  const more = new Float64Array(numbers.length + 1);
  more.set(numbers);
  more[numbers.length] = one;
  return more;
}
