import { splitTex } from '../split-tex.ts';

/** What a question is about, and how it came to be. */
export type DraftKind = 'definition' | 'rule' | 'formula' | 'quantity' | 'blank';

/** A question that may be asked from a sentence, to be changed and accepted by the student. */
export interface Draft {
  kind: DraftKind;
  prompt: string;
  answer: string;
}

/** What stands in a prompt for the words that are asked for. */
export const GAP = '…';

/** A short name of something, as a subject: "the group velocity", "a seiche". */
const NAME = "((?:an?|the)\\s+)?([\\p{L}][\\p{L}\\-’']*(?:\\s+[\\p{L}][\\p{L}\\-’']*){0,4}?)";
/** Words that stand for something named before: nothing can be asked of them alone. */
const POINTING =
  /^(it|this|that|these|those|they|he|she|we|you|there|here|such|what|which|one|each|both|all|i)\b/i;

const DEFINED = new RegExp(`^${NAME}\\s+(?:is|are)\\s+((?:an?|the|any|that)\\s+.{8,}?)[.!]?$`, 'iu');
const MEANS = new RegExp(
  `^${NAME}\\s+(?:means|refers to|is defined as|is short for|stands for)\\s+(.{4,}?)[.!]?$`,
  'iu',
);
const CALLED =
  /^(.{8,}?)\s+(?:is|are)\s+(?:called|known as|termed|named)\s+((?:(?:an?|the)\s+)?[\p{L}][\p{L}\-’' ]{1,50}?)[.!]?$/iu;
const RULE =
  /^(.{3,80}?)\s+(?:depends? on|(?:is|are) (?:directly |inversely )?proportional to|(?:increases?|decreases?|grows?|falls?|rises?|varies|vary) (?:with|as))\s+(.{3,}?)[.!]?$/iu;
const CONDITION = /^((?:if|when|where|as soon as)\s+[^,]{4,90}),\s+(?:then\s+)?(.{6,}?)[.!]?$/iu;
/** A number with a unit or a sign of per cent, in words or in signs. */
const QUANTITY =
  /(?:about\s+|roughly\s+|nearly\s+)?[−-]?\d[\d\s.,]*(?:×\s*10\S*\s*)?\s?(?:%|°\s?[CFK]?|per cent|(?:kilo|centi|milli|mega|giga)?(?:metres?|meters?|grams?|seconds?|minutes?|hours?|days?|years?|pascals?|newtons?|joules?|watts?|hertz|volts?|degrees?|litres?|kelvins?|knots?)(?:\s(?:per|in|a)\s(?:a\s)?\p{L}+)?|(?:[kcmMGµ]?(?:m|g|s|Pa|N|J|W|Hz|V|K|L|l|A|C|h))(?:\s?[⁻−-]?[¹²³]|\/[a-zA-Z]+[¹²³]?|\b))/u;

/** What a sentence defines. */
export function definitionIn(sentence: string): Draft | null {
  const called = CALLED.exec(sentence);
  if (called && !POINTING.test(called[1]!.replace(/^such (an?|the)\s/i, 'x ')))
    return draft(
      'definition',
      `What is meant by ${called[2]!.trim()}?`,
      capital(called[1]!.replace(/^such\s+/i, '')),
    );
  const found = MEANS.exec(sentence) ?? DEFINED.exec(sentence);
  if (!found) return null;
  const name = `${found[1] ?? ''}${found[2]!}`;
  if (POINTING.test(name) || POINTING.test(found[2]!)) return null;
  return draft('definition', `What is meant by ${small(name)}?`, capital(found[3]!));
}

/** What a sentence says of how something depends on something else, or of what holds if something does. */
export function ruleIn(sentence: string): Draft | null {
  const condition = CONDITION.exec(sentence);
  if (condition) return draft('rule', `What follows ${small(condition[1]!)}?`, capital(condition[2]!));
  const rule = RULE.exec(sentence);
  if (!rule || POINTING.test(rule[1]!)) return null;
  return draft('rule', `What does ${small(rule[1]!)} depend on, and how?`, sentence);
}

/** The equations of a sentence: what stands on the left is asked for. */
export function formulasIn(sentence: string): Draft[] {
  return splitTex(sentence).flatMap((piece) => {
    if (piece.kind !== 'maths') return [];
    const at = equalsAt(piece.tex);
    if (at < 0) return [];
    const [left, right] = [piece.tex.slice(0, at).trim(), piece.tex.slice(at + 1).trim()];
    // A number put in is an example, not a formula to know.
    if (left === '' || right === '' || !/[a-zA-Zα-ω]/.test(withoutUnits(right))) return [];
    return [
      draft('formula', `State the formula for \\(${left}\\).`, `\\(${piece.tex.replace(/[.,;\s]+$/, '')}\\)`),
    ];
  });
}

/** The first quantity with a unit in a sentence, left out. */
export function quantityIn(sentence: string): Draft | null {
  if (splitTex(sentence).some(({ kind }) => kind === 'maths')) return null;
  const found = QUANTITY.exec(sentence);
  if (!found) return null;
  const answer = found[0].trim();
  return draft('quantity', sentence.replace(found[0].trim(), GAP), answer);
}

/** The first equals sign outside braces; -1 where there is none, or several, as in a chain of steps. */
function equalsAt(tex: string): number {
  let [depth, found] = [0, -1];
  for (let i = 0; i < tex.length; i++) {
    if (tex[i] === '{') depth++;
    else if (tex[i] === '}') depth--;
    else if (tex[i] === '=' && depth === 0) {
      if (found >= 0) return -1;
      found = i;
    }
  }
  return found;
}

const withoutUnits = (tex: string): string =>
  tex
    .replace(/\\(?:mathrm|text|operatorname|unit)\s*\{[^}]*\}/g, '')
    .replace(/\\(?:times|cdot|,|;|quad|approx|ldots|[ ])/g, '');

const draft = (kind: DraftKind, prompt: string, answer: string): Draft => ({
  kind,
  prompt,
  answer: answer.trim(),
});

const capital = (words: string): string => words.trim().replace(/^\p{Ll}/u, (letter) => letter.toUpperCase());
/** A sentence's first letter in the middle of another; abbreviations keep theirs. */
const small = (words: string): string =>
  words.trim().replace(/^\p{Lu}(?=\p{Ll}|\s)/u, (letter) => letter.toLowerCase());
