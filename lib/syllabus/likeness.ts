import { Stems, plainText, termsOf } from './match/terms.ts';

/** The words of a text that carry its subject, by their stems. */
export const wordsOf = (text: string, stems = new Stems()): Set<string> =>
  new Set(termsOf(plainText(text), stems).map(({ stem }) => stem));

/** How much each word tells apart: in a course on the sea, "sea" says little. */
export type Weights = ReadonlyMap<string, number>;

/** A word's weight among texts: the logarithm of one more than all texts over those that have it (common practice). */
export function weightsOf(texts: readonly ReadonlySet<string>[]): Weights {
  const counts = new Map<string, number>();
  for (const words of texts) for (const word of words) counts.set(word, (counts.get(word) ?? 0) + 1);
  return new Map([...counts].map(([word, count]) => [word, Math.log(1 + texts.length / count)]));
}

/**
 * How much two sets of words have in common, 0 to 1: the Dice coefficient (Dice 1945, Ecology 26, 297–302), each word
 * by its weight. Null where one of them is empty, so that nothing can be said.
 */
export function alike(a: ReadonlySet<string>, b: ReadonlySet<string>, weights: Weights): number | null {
  if (a.size === 0 || b.size === 0) return null;
  const weigh = (words: Iterable<string>): number => {
    let sum = 0;
    for (const word of words) sum += weights.get(word) ?? 1;
    return sum;
  };
  return (2 * weigh([...a].filter((word) => b.has(word)))) / (weigh(a) + weigh(b));
}
