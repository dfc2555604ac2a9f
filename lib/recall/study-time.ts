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
  /**
   * Model time of a moment (epoch ms), in seconds from a zero that all clocks share. It stays as it is until an
   * attempt is added that is dated before the moment.
   */
  seconds(at: number): number;
  /** Model age, in seconds, at `to` of something that happened at `from` (epoch ms); at least 1. */
  age(from: number, to: number): number;
}

/** A clock that goes on as attempts are made. */
export interface GrowingClock extends StudyClock {
  /** Count in an attempt (epoch ms). False, and nothing done, where it is dated before the latest: build it anew. */
  add(at: number): boolean;
  /** The attempts' moments, epoch ms, oldest first: a copy. */
  moments(): Float64Array;
}

/** Model time counts from 2020-01-01 UTC: near enough to all moments for doubles to hold a millionth of a second. */
const ZERO = 1_577_836_800_000;

/**
 * Build the clock of a course.
 * @param moments epoch ms of all attempts of the course, in any order, equal ones allowed; may be none
 */
export function studyClock(moments: Iterable<number>): GrowingClock {
  let starts = Float64Array.from(moments).sort();
  let count = starts.length;
  /** For each attempt, the seconds within study before it. */
  let within = new Float64Array(count);
  for (let i = 1; i < count; i++) within[i] = within[i - 1]! + reach(starts[i - 1]!, starts[i]!);

  const seconds = (at: number): number => {
    const last = countUpTo(starts, count, at) - 1;
    const inside = last < 0 ? 0 : within[last]! + reach(starts[last]!, at);
    return OUTSIDE_SCALE * ((at - ZERO) / 1000) + (1 - OUTSIDE_SCALE) * inside;
  };
  const add = (at: number): boolean => {
    const last = count - 1;
    if (count > 0 && at < starts[last]!) return false;
    if (count === starts.length) [starts, within] = [longer(starts), longer(within)];
    within[count] = count > 0 ? within[last]! + reach(starts[last]!, at) : 0;
    starts[count++] = at;
    return true;
  };
  return {
    seconds,
    age: (from, to) => Math.max(LEAST_AGE, seconds(to) - seconds(from)),
    add,
    moments: () => starts.slice(0, count),
  };
}

/** Seconds within study that an attempt brings about until `to`, where no other attempt lies between. */
const reach = (attempt: number, to: number): number => Math.min((to - attempt) / 1000, SESSION_REACH);

/** The same numbers with room for as many more. */
function longer(numbers: Float64Array): Float64Array<ArrayBuffer> {
  const more = new Float64Array(Math.max(64, 2 * numbers.length));
  more.set(numbers);
  return more;
}

/** How many of the first `count` sorted numbers are no greater than `at`: binary search. */
function countUpTo(sorted: Float64Array, count: number, at: number): number {
  let low = 0;
  let high = count;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (sorted[middle]! <= at) low = middle + 1;
    else high = middle;
  }
  return low;
}
