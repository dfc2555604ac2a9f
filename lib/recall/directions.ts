import type { Item } from '#lib/model/item.ts';
import type { RoundOrder } from '#lib/model/round-order.ts';

/** An order that goes by how the notes stand. */
export type Direction = Exclude<RoundOrder, 'gain'>;

/** Shuffles that are tried; about one in three has no two in their usual sequence. */
const TRIES = 60;

/**
 * Items in the order of a direction.
 *
 * Out of order is a shuffle in which no item comes straight after the one that it comes after in the notes, so that
 * recall cannot lean on sequence. Of two or three items that may be impossible: then it is the shuffle with the
 * fewest.
 * @param items as they stand in the notes
 * @param random a number from 0 up to 1
 */
export function inDirection<T>(items: readonly T[], direction: Direction, random: () => number): T[] {
  if (direction === 'forward') return [...items];
  if (direction === 'backToFront') return items.toReversed();
  const places = items.map((_, i) => i);
  let best = shuffled(places, random);
  for (let i = 1; i < TRIES && sequences(best) > 0; i++) {
    const other = shuffled(places, random);
    if (sequences(other) < sequences(best)) best = other;
  }
  return best.map((place) => items[place]!);
}

/** How often an item comes straight after the one before it in the notes. */
const sequences = (places: readonly number[]): number =>
  places.filter((place, i) => i > 0 && place === places[i - 1]! + 1).length;

/** Fisher and Yates' shuffle. */
function shuffled(places: readonly number[], random: () => number): number[] {
  const all = [...places];
  for (let i = all.length - 1; i > 0; i--) {
    const other = Math.floor(random() * (i + 1));
    [all[i], all[other]] = [all[other]!, all[i]!];
  }
  return all;
}

/** A longer answer says too much to ask back from. Our choice. */
const LONGEST_TURNED = 120;

/**
 * Whether it makes sense to show the answer and ask for what it answers: it must be short, and say more than a number,
 * a yes or a no, which would fit many questions.
 */
export function canBeTurned({ covers }: Pick<Item, 'covers'>): boolean {
  const text = covers.trim();
  return text.length <= LONGEST_TURNED && /\p{L}{2}/u.test(text) && !/^(yes|no|true|false)\b/i.test(text);
}

/** The item asked from its answer's side: what was covered is shown, what was shown is covered. */
export const turned = <T extends Pick<Item, 'asks' | 'covers'>>(item: T): T => ({
  ...item,
  asks: item.covers,
  covers: item.asks,
});
