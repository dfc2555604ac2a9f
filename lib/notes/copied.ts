import { formulaRanges } from './split-tex.ts';

/** Words in a row, the same as in the passage, from which on they count as copied. Our choice. */
export const COPIED_RUN = 8;

/** Own words of which at least this part is copied are no own words. Our choice. */
export const COPIED_PART = 0.5;

/** Shorter words of one's own cannot be told from what everybody would say. */
const FEWEST_WORDS = 4;

/** What was copied from a passage. */
export interface Copied {
  /** Where in the own words, in UTF-16 units, in order. */
  runs: { from: number; to: number }[];
  /** Part of the own words, 0 to 1, by count of words. */
  part: number;
}

interface Word {
  plain: string;
  from: number;
  to: number;
}

/**
 * What stands in a student's own words as it stands in the passage: runs of COPIED_RUN words or more, or all of the
 * words where they are fewer. Case, punctuation and line breaks do not matter; a formula is the same in any words, and
 * counts as none.
 */
export function copiedFrom(passage: string, ownWords: string): Copied {
  const own = wordsOf(ownWords);
  const shortest = Math.min(COPIED_RUN, own.length);
  if (own.length < FEWEST_WORDS) return { runs: [], part: 0 };
  const theirs = wordsOf(passage).map(({ plain }) => plain);
  const starts = Map.groupBy(theirs.keys(), (at): string => theirs[at]!);
  const runs: Copied['runs'] = [];
  let copied = 0;
  for (let at = 0; at < own.length;) {
    const length = longestAt(own, at, theirs, starts);
    if (length < shortest) {
      at++;
      continue;
    }
    runs.push({ from: own[at]!.from, to: own[at + length - 1]!.to });
    copied += length;
    at += length;
  }
  return { runs, part: copied / own.length };
}

/** Whether own words are there, and more than a copy of the passage. */
export function isOwn(passage: string, ownWords: string): boolean {
  return ownWords.trim() !== '' && copiedFrom(passage, ownWords).part < COPIED_PART;
}

function longestAt(
  own: readonly Word[],
  at: number,
  theirs: readonly string[],
  starts: ReadonlyMap<string, readonly number[]>,
): number {
  let longest = 0;
  for (const start of starts.get(own[at]!.plain) ?? []) {
    let length = 1;
    while (at + length < own.length && own[at + length]!.plain === theirs[start + length]) length++;
    longest = Math.max(longest, length);
  }
  return longest;
}

function wordsOf(text: string): Word[] {
  // Places stay as they are.
  let prose = text;
  for (const { from, to } of formulaRanges(text))
    prose = prose.slice(0, from) + ' '.repeat(to - from) + prose.slice(to);
  return [...prose.matchAll(/[\p{L}\p{M}\p{N}]+/gu)].map(({ 0: word, index }) => ({
    plain: word.normalize('NFKC').toLowerCase(),
    from: index,
    to: index + word.length,
  }));
}
