import { ALIKE, dice, stemsOf } from './likeness.ts';

/** What is to be said against a question. */
export type Objection = { kind: 'near-copy'; of: string } | { kind: 'sequence-only' };

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
