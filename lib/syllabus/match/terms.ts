import { stemmer } from 'stemmer';
import { isPlainCommand } from '../command-words.ts';
import { fullName, greekLetterOf, wordOfCommand, wordOfSign } from './maths-words.ts';
import { STOP_WORDS } from './stop-words.ts';

/** A word of a text that carries a subject. */
export interface Term {
  /** What counts as the same word: the stem, or the name of a sign. */
  stem: string;
  /** The word as the student reads it, and where it stands in the text (UTF-16, end exclusive). */
  surface: string;
  start: number;
  end: number;
  /** Whether no punctuation, and at most two words without a subject, stand between it and the term before. */
  joined: boolean;
}

const GREEK = '\\u0370-\\u03ff';
const TOKEN = new RegExp(
  [
    '\\\\[A-Za-z]+',
    '[A-Za-z\\u00c0-\\u024f\\u1e00-\\u1eff]+',
    `[${GREEK}](?![${GREEK}])`,
    '[∫∑∏√∞∂∇]',
    '\\p{L}+',
    '[.,;:!?()\\[\\]\\n]',
  ].join('|'),
  'gu',
);

/** "Rate of the change" is one thing; words further apart are not. */
const WIDEST_GAP = 2;

const LETTER = /\p{L}/u;

/**
 * Turns words into stems and remembers each word, since a text repeats its words. One per index.
 */
export class Stems {
  readonly #known = new Map<string, string | null>();

  /** The stem of a word or sign; null for one that carries no subject. */
  of(token: string): string | null {
    let stem = this.#known.get(token);
    if (stem === undefined) {
      stem = stemOf(token);
      this.#known.set(token, stem);
    }
    return stem;
  }
}

/** Text in the form in which terms are looked for: ligatures and mathematical alphabets as plain letters. */
export const plainText = (text: string): string => text.normalize('NFKC');

/** The terms of a text, in order. Punctuation parts terms; stop words, command words and lone letters fall out. */
export function termsOf(text: string, stems: Stems): Term[] {
  const terms: Term[] = [];
  let gap = Infinity;
  for (const match of text.matchAll(TOKEN)) {
    const token = match[0];
    const start = match.index;
    const stem = stems.of(token);
    if (stem === null) gap += isBreak(token) ? Infinity : 1;
    else {
      const joined = gap <= WIDEST_GAP;
      terms.push({ stem, surface: surfaceOf(token), start, end: start + token.length, joined });
      gap = 0;
    }
  }
  return terms;
}

/** How often each stem stands in a text: the same as counting what termsOf finds, and much faster. */
export function countStems(text: string, stems: Stems): Map<string, number> {
  const counts = new Map<string, number>();
  TOKEN.lastIndex = 0;
  for (let match = TOKEN.exec(text); match; match = TOKEN.exec(text)) {
    const stem = stems.of(match[0]);
    if (stem !== null) counts.set(stem, (counts.get(stem) ?? 0) + 1);
  }
  return counts;
}

/** What a term and the one before it count as together; null where something stands between them. */
export function pairOf(before: Term | undefined, term: Term): string | null {
  return before && term.joined ? `${before.stem} ${term.stem}` : null;
}

const isBreak = (token: string): boolean => token.length === 1 && !LETTER.test(token);

function surfaceOf(token: string): string {
  if (!token.startsWith('\\')) return token;
  const word = wordOfCommand(token) ?? token;
  return greekLetterOf(word) ?? word;
}

function stemOf(token: string): string | null {
  if (token.startsWith('\\')) return stemOfWord(wordOfCommand(token) ?? '');
  return wordOfSign(token) ?? stemOfWord(withoutAccents(token.toLowerCase()));
}

function stemOfWord(word: string): string | null {
  if (word.length < 2 || STOP_WORDS.has(word) || isPlainCommand(word)) return null;
  return /^[a-z]+$/.test(word) ? stemmer(oneSpelling(fullName(word))) : word;
}

const withoutAccents = (word: string): string => word.normalize('NFD').replace(/\p{M}/gu, '');

/** British and American spellings as one: the American form, since the stemmer expects it. */
export function oneSpelling(word: string): string {
  if (word.length < 5) return word;
  return word
    .replace(/is(e|ed|es|ing|ations?|ers?)$/, 'iz$1')
    .replace(/ys(e|ed|es|ing)$/, 'yz$1')
    .replace(/our(s|ed|ing|al)?$/, 'or$1')
    .replace(/tre(s)?$/, 'ter$1');
}
