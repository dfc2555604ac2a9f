/**
 * What practice is still to come before the exam, as far as it can be guessed: a fixed time each day, in which items
 * are taken in turn. It decides whether an item that is left out now will get another turn.
 */

/** Seconds of practice a day that are reckoned with unless the caller knows better. Our choice: five short rounds. */
export const PRACTICE_A_DAY = 600;

/** The last turn comes at least so long before the exam, in hours: after that, there is sleep. Our choice. */
export const LAST_HOURS = 8;

const DAY_MS = 86_400_000;

export interface Turns {
  /** The last turn, epoch ms: at this time of day, LAST_HOURS or more before the aim; now where no later one fits. */
  lastAt: number;
  /** Chance, 0 to 1, of a turn later on for an item that is asked now. */
  ifAsked: number;
  /** The same for one that is not. Those not asked now are first in turn. */
  ifLeft: number;
}

/**
 * The turns still to come.
 * @param aim what is practised for, epoch ms
 * @param secondsADay of practice on each day to come, today's included
 * @param secondsForAll expected time for one attempt at every item
 */
export function turnsLeft(now: number, aim: number, secondsADay: number, secondsForAll: number): Turns {
  const days = Math.max(0, Math.floor((aim - now) / DAY_MS - LAST_HOURS / 24));
  if (days === 0 || secondsForAll <= 0) return { lastAt: now, ifAsked: 0, ifLeft: 0 };
  /** Parts of all items that can be asked today, and how often each can be after today. */
  const today = Math.min(1, secondsADay / secondsForAll);
  const later = (days * secondsADay) / secondsForAll;
  const others = 1 - today;
  return {
    lastAt: now + days * DAY_MS,
    ifAsked: clamped((later - others) / today),
    ifLeft: others === 0 ? 1 : clamped(later / others),
  };
}

const clamped = (share: number): number => Math.min(1, Math.max(0, share));
