import { stemmer } from 'stemmer';

/** What is to be said against a question. */
export type Objection = { kind: 'near-copy'; of: string } | { kind: 'sequence-only' };

/** From this likeness on, two questions ask the same. Our choice. */
const ALIKE = 0.8;

/** Words that every question has. */
const ASKING = new Set(
  'what which who how why when where is are was were do does did the a an of for by to in on with and or meant state give name define'.split(
    ' ',
  ),
);

/** Asks what comes where, which the order of the notes gives away. */
const SEQUENCE =
  /\b(?:what|which)\b.{0,40}\b(?:comes|came|follows|followed|stands|is|was)\s+(?:next|first|second|third|last|before|after|above|below)\b|\bin (?:what|which) order\b|\b(?:first|second|third|fourth|next|last|previous)\s+(?:line|point|item|step|question|topic|paragraph)\b|\blist\b.{0,60}\bin order\b/i;

/**
 * What is to be said against a question: that it is nearly a copy of another (Dice coefficient of word stems, numbers
 * and formulas), or that it only asks for the sequence of things.
 * @param others prompts of the questions that are there already
 */
export function objectionsTo(prompt: string, others: readonly string[]): Objection[] {
  const objections: Objection[] = [];
  const words = stemsOf(prompt);
  let [likest, most] = ['', 0];
  for (const other of others) {
    const likeness = dice(words, stemsOf(other));
    if (likeness > most) [likest, most] = [other, likeness];
  }
  if (words.size > 0 && most >= ALIKE) objections.push({ kind: 'near-copy', of: likest });
  if (SEQUENCE.test(prompt)) objections.push({ kind: 'sequence-only' });
  return objections;
}

/** Signs and numbers count as well: "the formula for c" and "the formula for k" are not the same question. */
function stemsOf(prompt: string): Set<string> {
  const words =
    prompt
      .normalize('NFKC')
      .toLowerCase()
      .match(/\\?\p{L}+|\d+/gu) ?? [];
  return new Set(
    words.filter((word) => !ASKING.has(word)).map((word) => (word.length > 2 ? stemmer(word) : word)),
  );
}

/** Dice (1945), Ecology 26, 297-302: twice what both have, over all that each has. */
function dice(a: ReadonlySet<string>, b: ReadonlySet<string>): number {
  let both = 0;
  for (const word of a) if (b.has(word)) both++;
  return a.size + b.size === 0 ? 0 : (2 * both) / (a.size + b.size);
}
