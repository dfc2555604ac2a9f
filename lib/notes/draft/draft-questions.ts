import { type Draft, GAP, definitionIn, formulasIn, quantityIn, ruleIn } from './patterns.ts';
import { sentencesOf } from './sentences.ts';

export type { Draft, DraftKind } from './patterns.ts';

/** More drafts than anyone looks through. */
const MOST = 12;
/** A longer sentence says too much for one question. */
const LONGEST = 400;

/**
 * Questions that a passage suggests: what its sentences define, the rules and formulas they state, and quantities with
 * units. By the shape of English sentences alone: some fit and some do not, so that each is offered to be changed or
 * left. In the order of the passage, at most 12, none twice.
 */
export function draftQuestions(passage: string): Draft[] {
  const drafts = new Map<string, Draft>();
  for (const { text } of sentencesOf(passage)) {
    if (text.length > LONGEST) continue;
    for (const one of draftsOf(text)) if (!drafts.has(one.prompt)) drafts.set(one.prompt, one);
  }
  return [...drafts.values()].slice(0, MOST);
}

function draftsOf(sentence: string): Draft[] {
  const said = definitionIn(sentence) ?? ruleIn(sentence) ?? quantityIn(sentence);
  return [...(said ? [said] : []), ...formulasIn(sentence)];
}

/**
 * The question that asks for words which the student has chosen in a text: their sentence, with a gap where they stand.
 * Null where they are blank.
 * @param from where the words begin in the text, in UTF-16 units, and `to` where they end
 */
export function blankQuestion(text: string, from: number, to: number): Draft | null {
  const chosen = text.slice(from, to);
  if (chosen.trim() === '') return null;
  const [start, end] = [from + leading(chosen), to - trailing(chosen)];
  const around = sentencesOf(text).filter((sentence) => sentence.from < end && sentence.to > start);
  const [first, last] = [around[0], around.at(-1)];
  if (!first || !last) return null;
  const [before, after] = [
    text.slice(Math.min(first.from, start), start),
    text.slice(end, Math.max(last.to, end)),
  ];
  const prompt = `${before}${GAP}${after}`.replace(/\s+/g, ' ').trim();
  return { kind: 'blank', prompt, answer: text.slice(start, end).replace(/\s+/g, ' ') };
}

const leading = (words: string): number => words.length - words.trimStart().length;
const trailing = (words: string): number => words.length - words.trimEnd().length;
