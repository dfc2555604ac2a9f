import { folded } from './fold.ts';

// Signs that Unicode holds twice count as Greek letters: micro, ohm, and the mathematical alphabets.
const GREEK = '\\u0370-\\u03ff\\u00b5\\u2126\\u{1d6a8}-\\u{1d7cb}';
const INSIDE = '\\p{L}\\p{M}\\p{N}\\u00ad\\u200b-\\u200d';
/** Scripts that put no space between words: each character counts by itself. */
const UNSPACED = ['Han', 'Hiragana', 'Katakana', 'Thai', 'Lao', 'Khmer', 'Myanmar']
  .map((script) => `\\p{Script=${script}}`)
  .join('');

const TOKEN = new RegExp(
  [
    '\\\\[A-Za-z]+',
    // A lone Greek letter is a symbol; several are a word.
    `[${GREEK}](?![${GREEK}])`,
    `[${GREEK}][${GREEK}\\p{M}]+`,
    '[∫∑∏√∞∂∇]',
    '\\p{Nd}+(?:[.,]\\p{Nd}+)*',
    `[${UNSPACED}]`,
    // A word, with an index of TeX or a chemical formula in it: H_2O, k_{0}. No unspaced script, no Greek.
    `[\\p{L}--[${GREEK}${UNSPACED}]]` +
      `(?:[[${INSIDE}]--[${GREEK}${UNSPACED}]]|_\\{[A-Za-z0-9]+\\}|_[A-Za-z0-9])*` +
      "(?:['’]s(?!\\p{L}))?",
    '\\p{N}',
    '\\p{Extended_Pictographic}',
  ].join('|'),
  'gv',
);

const HYPHENS = '\\-\u2010\u2011';
/** Words of two letters or more that hyphens join. A minus between two symbols joins nothing. */
const COMPOUND = new RegExp(`\\p{L}[\\p{L}\\p{M}]+(?:[${HYPHENS}]\\p{L}[\\p{L}\\p{M}]+)+`, 'gu');
const HYPHEN = new RegExp(`[${HYPHENS}]`);

/** Takes a word and where it stands in the text (UTF-16, end exclusive); false ends the reading. */
type Visit = (word: string, start: number, end: number, isJoined: boolean) => unknown;

/** Reads the words of texts in the form that is searched. One per index: it remembers how each word is folded. */
export class WordReader {
  readonly #known = new Map<string, string>();

  /**
   * Calls `visit` for each word in turn, until it gives false. Words that a hyphen joins are told once more as one, at
   * the end and with `isJoined`: "deep-water" is found by "deepwater".
   */
  read(text: string, visit: Visit): void {
    // Kept here, since `visit` may read another text.
    for (let at = 0; ;) {
      TOKEN.lastIndex = at;
      const match = TOKEN.exec(text);
      if (!match) break;
      const start = match.index;
      at = start + match[0].length;
      const word = this.#folded(match[0]);
      if (word !== '' && visit(word, start, at, false) === false) return;
    }
    if (!HYPHEN.test(text)) return;
    for (const { 0: compound, index } of text.matchAll(COMPOUND)) {
      const word = compound
        .split(HYPHEN)
        .map((part) => this.#folded(part))
        .join('');
      if (visit(word, index, index + compound.length, true) === false) return;
    }
  }

  #folded(token: string): string {
    let word = this.#known.get(token);
    if (word === undefined) {
      word = folded(token);
      this.#known.set(token, word);
    }
    return word;
  }
}
