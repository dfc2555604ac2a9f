import { decayAfter, LEAST_AGE } from './activation.ts';
import { type ItemMemory, strengthOf } from './memory.ts';
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
  const strengthAt = (moment: number): number => strengthOf(modelAt, decays, modelAt.length, moment);
  const left = (from: number, to: number, decay: number): number => Math.max(LEAST_AGE, to - from) ** -decay;

  const [here, there, end] = [strengthAt(now), strengthAt(last), strengthAt(aim)];
  const decay = decayAfter(here);
  const added = left(now, aim, decay);
  const later = left(last, aim, decayAfter(there));
  const laterAgain = left(last, aim, decayAfter(there + left(now, last, decay)));
  return {
    now: meanChance(weights, here),
    ifNone: meanChance(weights, end),
    ifNow: meanChance(weights, end + added),
    ifLast: meanChance(weights, end + later),
    ifBoth: meanChance(weights, end + added + laterAgain),
  };
}
