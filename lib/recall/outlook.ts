import { decayAfter } from './activation.ts';
import { type ItemMemory, left, strengthOf } from './memory.ts';
import { meanChance, weightsOf } from './offset.ts';
import type { StudyClock } from './study-time.ts';

/** Moments that all items of a course share, in model time. */
export interface Moments {
  now: number;
  /** The last turn that a later practice could have. */
  last: number;
  /** What is practised for. */
  aim: number;
}

/** Moments in model time from epoch ms; each is taken as no earlier than the one before it. */
export function momentsOf(clock: StudyClock, at: { now: number; last: number; aim: number }): Moments {
  const now = clock.seconds(at.now);
  const last = Math.max(now, clock.seconds(at.last));
  return { now, last, aim: Math.max(last, clock.seconds(at.aim)) };
}

/**
 * The chance now, and at the moment aimed at under four courses of practice: none any more, one attempt now, one at
 * the last turn, one at both. Each is the mean over how the attempts may go; see offset.ts.
 */
export interface Outlook {
  now: number;
  ifNone: number;
  ifNow: number;
  ifLast: number;
  ifBoth: number;
}

/** Look ahead for one item. `ifLast` and `ifBoth` mean nothing where the last turn is now. */
export function outlook(memory: ItemMemory, { now, last, aim }: Moments): Outlook {
  const { modelAt, decays, offset } = memory;
  const weights = weightsOf(offset);
  const here = strengthOf(modelAt, decays, now);
  const there = strengthOf(modelAt, decays, last);
  const end = strengthOf(modelAt, decays, aim);
  const decay = decayAfter(here);
  const added = left(aim - now, decay);
  const later = left(aim - last, decayAfter(there));
  const laterAgain = left(aim - last, decayAfter(there + left(last - now, decay)));
  return {
    now: meanChance(weights, here),
    ifNone: meanChance(weights, end),
    ifNow: meanChance(weights, end + added),
    ifLast: meanChance(weights, end + later),
    ifBoth: meanChance(weights, end + added + laterAgain),
  };
}
