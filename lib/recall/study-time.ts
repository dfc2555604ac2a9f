import { LEAST_AGE } from './activation.ts';

/**
 * h: how fast forgetting runs outside a study session, against inside it.
 * Source: the model in activation.ts; medium confidence, as one secondary lineage gives the value.
 */
export const OUTSIDE_SCALE = 0.025;

/**
 * How long a study session goes on after an attempt, in seconds. Our choice, not published: long enough to read
 * an answer again and to work a long question, short enough that a single round adds little.
 */
export const SESSION_REACH = 300;

/**
 * Model time: what a stretch of wall-clock time counts for in forgetting.
 *
 * A moment lies within study if an attempt of the course, at any item, came no more than SESSION_REACH before it.
 * A stretch counts its seconds within study, plus OUTSIDE_SCALE times its seconds outside. So model time never
 * runs backwards, has no jumps, and adds up: from A to B and from B to C make A to C. Up to a moment it depends on
 * attempts before that moment alone, so that a later attempt changes no age already reckoned.
 */
export interface StudyClock {
  /** Model time of a moment (epoch ms), in seconds from an arbitrary zero of this clock. */
  seconds(at: number): number;
  /** Model age, in seconds, at `to` of something that happened at `from` (epoch ms); at least 1. */
  age(from: number, to: number): number;
}

/**
 * Build the clock of a course.
 * @param moments epoch ms of all attempts of the course, in any order, equal ones allowed; may be none
 */
export function studyClock(moments: Iterable<number>): StudyClock {
  const starts = Float64Array.from(moments).sort();
  const within = withinStudy(starts);
  const zero = starts[0] ?? 0;
  const seconds = (at: number): number => {
    const inside = insideBefore(starts, within, at);
    return OUTSIDE_SCALE * ((at - zero) / 1000) + (1 - OUTSIDE_SCALE) * inside;
  };
  return { seconds, age: (from, to) => Math.max(LEAST_AGE, seconds(to) - seconds(from)) };
}

/** For each attempt, the seconds within study before it. */
function withinStudy(starts: Float64Array): Float64Array {
  const sums = new Float64Array(starts.length);
  for (let i = 1; i < starts.length; i++) {
    sums[i] = (sums[i - 1] ?? 0) + reach(starts[i - 1] ?? 0, starts[i] ?? 0);
  }
  return sums;
}

/** Seconds within study that an attempt brings about until `to`, where no other attempt lies between. */
const reach = (attempt: number, to: number): number => Math.min((to - attempt) / 1000, SESSION_REACH);

function insideBefore(starts: Float64Array, within: Float64Array, at: number): number {
  const last = countUpTo(starts, at) - 1;
  return last < 0 ? 0 : (within[last] ?? 0) + reach(starts[last] ?? 0, at);
}

/** How many of the sorted numbers are no greater than `at`: binary search. */
function countUpTo(sorted: Float64Array, at: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((sorted[middle] ?? Infinity) <= at) low = middle + 1;
    else high = middle;
  }
  return low;
}
