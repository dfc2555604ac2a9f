import { ALIKE, dice, stemsOf } from '#lib/notes/draft/likeness.ts';

/**
 * Which texts ask nearly the same: pairs of places, lower first, whose word stems have a Dice coefficient of 0.8 or more.
 *
 * Not every pair is compared. Sets of a and b stems that are so alike share at least 0.4 (a + b), and the smaller has at
 * least two thirds of the larger, so either shares at least two thirds of its own. Two such sets, sorted alike, have one
 * of their first a - ceil(2a/3) + 1 stems in common (prefix filter: Chaudhuri, Ganti and Kaushik 2006, ICDE, 5).
 */
export function alikePairs(texts: readonly string[]): [number, number][] {
  const stems = texts.map(stemsOf);
  const often = new Map<string, number>();
  for (const set of stems) for (const stem of set) often.set(stem, (often.get(stem) ?? 0) + 1);
  /** Rare stems first: few texts begin with them. */
  const order = (a: string, b: string) => often.get(a)! - often.get(b)! || (a < b ? -1 : 1);
  const beginning = new Map<string, number[]>();
  const pairs: [number, number][] = [];
  stems.forEach((set, place) => {
    const first = [...set].sort(order).slice(0, set.size - Math.ceil((2 * set.size) / 3 - 1e-9) + 1);
    const earlier = new Set(first.flatMap((stem) => beginning.get(stem) ?? []));
    for (const other of earlier) if (dice(set, stems[other]!) >= ALIKE) pairs.push([other, place]);
    for (const stem of first) {
      const places = beginning.get(stem);
      if (places) places.push(place);
      else beginning.set(stem, [place]);
    }
  });
  return pairs.sort(([a, b], [c, d]) => a - c || b - d);
}
