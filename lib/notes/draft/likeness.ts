import { stemmer } from 'stemmer';

/** From this Dice coefficient on, two questions ask the same. Our choice. */
export const ALIKE = 0.8;

/** Words that every question has. */
const ASKING = new Set(
  'what which who how why when where is are was were do does did the a an of for by to in on with and or meant state give name define'.split(
    ' ',
  ),
);

/**
 * Word stems, numbers and formulas of a question. Signs and numbers count as well: "the formula for c" and "the formula
 * for k" are not the same question.
 */
export function stemsOf(prompt: string): Set<string> {
  const words =
    prompt
      .normalize('NFKC')
      .toLowerCase()
      .match(/\\?\p{L}+|\d+/gu) ?? [];
  return new Set(
    words.filter((word) => !ASKING.has(word)).map((word) => (word.length > 2 ? stemmer(word) : word)),
  );
}

/** Dice (1945), Ecology 26, 297-302: twice what both have, over all that each has. From 0 to 1. */
export function dice(a: ReadonlySet<string>, b: ReadonlySet<string>): number {
  let both = 0;
  for (const word of a) if (b.has(word)) both++;
  return a.size + b.size === 0 ? 0 : (2 * both) / (a.size + b.size);
}
