import type { Item } from '#lib/model/item.ts';

/**
 * Characters of English read in a second: 238 words a minute (Brysbaert 2019, J. Memory and Language 109, 104047,
 * doi 10.1016/j.jml.2019.104047: silent reading of non-fiction by adults) at about six characters a word, space
 * included (our rounding). Characters serve all scripts, and formulas, better than a count of words.
 */
const CHARACTERS_A_SECOND = (238 / 60) * 6;

/** Seconds to recall and to mark, besides reading. Our choice: with about 24 words in all an item takes 12 s. */
const RECALL_SECONDS = 6;

/** The student's own seconds count within these bounds; beyond them the popup was clicked through, or left. */
const SHORTEST = 2;
const LONGEST = 600;

/**
 * How long an attempt at an item takes, in seconds: what it took this student before, else by the length of its text.
 * @param medianSeconds median of the student's own attempts at it; null for none
 */
export function expectedSeconds(item: Pick<Item, 'asks' | 'covers'>, medianSeconds: number | null): number {
  const read = (item.asks.length + item.covers.length) / CHARACTERS_A_SECOND;
  return Math.min(LONGEST, Math.max(SHORTEST, medianSeconds ?? RECALL_SECONDS + read));
}
