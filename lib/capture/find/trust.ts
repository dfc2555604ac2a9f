import type { Place } from './places.ts';

/** Beyond so many units, more text makes a place no surer. */
const SURE_LENGTH = 200;
/** What prefix and suffix weigh beside the text itself, in units of it, and what the old place does. */
const CONTEXT_WEIGHT = 20;
const DISTANCE_WEIGHT = { byPath: 12, byPosition: 4 };
/** What it is worth that every letter is the same, where there are enough of them. */
const EQUAL_WEIGHT = 8;
const ENOUGH_TO_BE_EQUAL = 40;
/** Distance counts from so many units on, and ever less the more of it there is. */
const NEAR = 200;
const MOST_DOUBLINGS = 6;

/** A passage's length, and between which offsets in the text of the page it should begin. */
export interface Old {
  length: number;
  from: number;
  to: number;
  isByPath: boolean;
}

/** How well text, context and place fit together. */
function fit(place: Place, { length, from, to, isByPath }: Old): number {
  const weight = Math.min(length, SURE_LENGTH);
  const away = Math.max(from - place.start, place.start - to, 0);
  const doublings = Math.min(MOST_DOUBLINGS, Math.log2(1 + away / NEAR));
  const distance = doublings * (isByPath ? DISTANCE_WEIGHT.byPath : DISTANCE_WEIGHT.byPosition);
  const equal = place.likeness === 1 && length >= ENOUGH_TO_BE_EQUAL ? EQUAL_WEIGHT : 0;
  return place.likeness * weight + equal + (contextOf(place) ?? 0) * CONTEXT_WEIGHT - distance;
}

/** How well both sides fit together; null where the quote has none. */
function contextOf({ before, after }: Place): number | null {
  if (before === null || after === null) return before ?? after;
  return (before + after) / 2;
}

/** The place that fits best. */
export function bestPlace(places: readonly Place[], old: Old): Place | null {
  let best: { place: Place; fit: number } | null = null;
  for (const place of places) {
    const its = fit(place, old);
    if (!best || its > best.fit) best = { place, fit: its };
  }
  return best && best.place;
}

/** Whether nothing could fit better. */
export const isPerfect = ({ likeness, before, after }: Place): boolean =>
  likeness === 1 && (before ?? 1) === 1 && (after ?? 1) === 1;

/** The least likeness of a text of so many units: the first for a context that is gone, the second for one that fits. */
const LEAST = [
  { upTo: 12, alone: 2, together: 0.9 },
  { upTo: 32, alone: 1, together: 0.7 },
  { upTo: 80, alone: 0.8, together: 0.68 },
  { upTo: Infinity, alone: 0.75, together: 0.68 },
];

/** Whether so much is left that it is the passage and not one like it. A short text needs its context. */
export function isTrusted(place: Place, length: number): boolean {
  const { alone, together } = LEAST.find(({ upTo }) => length <= upTo)!;
  const context = contextOf(place);
  if (context === null) return place.likeness >= Math.min(alone, 1);
  return place.likeness >= alone - (alone - together) * context;
}
