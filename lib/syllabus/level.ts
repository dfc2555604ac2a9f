import { Stems, countStems, plainText, termsOf } from './match/terms.ts';
import { wordVectors } from './match/word-vectors.ts';

/**
 * How rare a word must be in English to say something of the level, 0 to 1: what is commoner, everyone knows. Our
 * choice: "equilibrium" and "tidal" are rarer, "crest" and "moment" are not.
 */
const RARE = 0.65;

/** A word of a passage that the course has not used. */
export interface StrangeWord {
  /** As it stands in the passage the first time. */
  word: string;
  count: number;
}

/** How a passage is pitched against the course's own words. */
export interface Level {
  /** Words that carry a subject and stand neither in the syllabus nor in the notes: the most frequent first. */
  strange: StrangeWord[];
  /** The part of the passage's words with a subject that they make up, 0 to 1; 0 where it has none. */
  part: number;
}

/**
 * Which words of a passage lie outside the course's own: those of its syllabus and of what the student wrote and
 * understood. Words are the same by their stems; everyday words and those that only say what to do do not count.
 * @param known texts of the course, in any order
 */
export function levelOf(passage: string, known: Iterable<string>): Level {
  const stems = new Stems();
  const ofCourse = new Set<string>();
  for (const text of known) for (const stem of countStems(plainText(text), stems).keys()) ofCourse.add(stem);
  const vectors = wordVectors();
  const terms = termsOf(plainText(passage), stems);
  const strange = new Map<string, StrangeWord>();
  for (const { stem, surface } of terms) {
    if (ofCourse.has(stem) || vectors.rarityOf(stem) < RARE) continue;
    const found = strange.get(stem);
    if (found) found.count += 1;
    else strange.set(stem, { word: surface, count: 1 });
  }
  const sorted = [...strange.values()].sort((a, b) => b.count - a.count);
  const counted = sorted.reduce((sum, { count }) => sum + count, 0);
  return { strange: sorted, part: terms.length === 0 ? 0 : counted / terms.length };
}
