import { Grams } from './grams.ts';

/** From one UTF-16 offset of a text up to another. */
export type Span = readonly [from: number, to: number];

/** A text with what editions of a page differ in left out, and where each of its units stood. */
export class FoldedText {
  /** UTF-16 units. */
  readonly codes: Uint16Array;
  /** Their offsets in the text that was folded. */
  readonly at: Uint32Array;
  /** Spans of that text, in order, that no reader sees. */
  readonly #silent: readonly Span[];
  #grams: Grams | undefined;

  constructor(codes: Uint16Array, at: Uint32Array, silent: readonly Span[] = []) {
    this.codes = codes;
    this.at = at;
    this.#silent = silent;
  }

  get length(): number {
    return this.codes.length;
  }

  /** Built when first asked for: a few milliseconds for a million units. */
  get grams(): Grams {
    return (this.#grams ??= new Grams(this.codes));
  }

  /** Whether a reader sees any of this stretch: many pages have their words once more in a script. */
  isSeen(start: number, end: number): boolean {
    const unit = this.at[start] ?? 0;
    const span = this.#silent.find(([from, to]) => from <= unit && unit < to);
    return !span || this.at[end - 1]! >= span[1];
  }

  slice(start: number, end: number): string {
    const from = Math.max(0, start);
    let text = '';
    for (let chunk = from; chunk < end; chunk += CHUNK)
      text += String.fromCharCode(...this.codes.subarray(chunk, Math.min(end, chunk + CHUNK)));
    return text;
  }

  part(start: number, end: number): FoldedText {
    return new FoldedText(this.codes.subarray(start, end), this.at.subarray(start, end));
  }

  /** The first place of this offset of the original text, or of one behind it. */
  placeOf(unit: number): number {
    let [low, high] = [0, this.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.at[middle]! < unit) low = middle + 1;
      else high = middle;
    }
    return low;
  }
}

/** Arguments that one call takes without trouble. */
const CHUNK = 4096;

/**
 * Without white space and invisible characters, which change whenever a page's markup does, and with plain quotes and
 * dashes, which change with its editor.
 */
export function squeeze(text: string, silent?: readonly Span[]): FoldedText {
  const codes = new Uint16Array(text.length);
  const at = new Uint32Array(text.length);
  let length = 0;
  for (let unit = 0; unit < text.length; unit++) {
    const code = text.charCodeAt(unit);
    const plain = code > 32 && code < 127 ? code : plainCode(code);
    if (plain === 0) continue;
    codes[length] = plain;
    at[length++] = unit;
  }
  return new FoldedText(codes.subarray(0, length), at.subarray(0, length), silent);
}

/** Zero for what is left out. */
function plainCode(code: number): number {
  if (code < 0xad) return code <= 32 || code === 0xa0 || (code >= 127 && code < 0xa0) ? 0 : code;
  if (code === 0xad || code === 0x3000 || code === 0xfeff || code === 0x1680) return 0;
  if (code >= 0x2000 && code <= 0x206f) return plainPunctuation(code);
  return code === 0x2212 ? HYPHEN : code;
}

const HYPHEN = 45;

function plainPunctuation(code: number): number {
  if (code <= 0x200f || (code >= 0x2028 && code <= 0x202f) || code >= 0x205f) return 0;
  if (code <= 0x2015) return HYPHEN;
  if (code >= 0x2018 && code <= 0x201b) return 39;
  if (code >= 0x201c && code <= 0x201f) return 34;
  return code;
}

/** Letters that stand alone or in pairs are mostly the symbols of a formula. */
const SHORTEST_WORD = 3;

/**
 * The words alone, run together: no digits, signs, short Latin and Greek letter groups or TeX commands. A formula that
 * is plain TeX in one edition and typeset in the next leaves the same words around it.
 */
export function wordsOnly(text: string, silent?: readonly Span[]): FoldedText {
  const codes = new Uint16Array(text.length);
  const at = new Uint32Array(text.length);
  let length = 0;
  let run = 0;
  for (let unit = 0; unit <= text.length; unit++) {
    const code = unit < text.length ? text.charCodeAt(unit) : 0;
    if (isLetter(code)) {
      codes[length] = code;
      at[length++] = unit;
      run++;
      continue;
    }
    if (run > 0 && isDropped(text, unit - run, run, codes[length - 1]!)) length -= run;
    run = 0;
  }
  return new FoldedText(codes.subarray(0, length), at.subarray(0, length), silent);
}

function isDropped(text: string, start: number, run: number, last: number): boolean {
  return text[start - 1] === '\\' || (run < SHORTEST_WORD && last < FIRST_WITHOUT_SPACES);
}

/** From here on stand the scripts that are written without spaces, whose words may have one character. */
const FIRST_WITHOUT_SPACES = 0x2e80;

function isLetter(code: number): boolean {
  if (code < 0xc0) return (code | 32) >= 97 && (code | 32) <= 122;
  if (code < 0x2000) return code !== 0xd7 && code !== 0xf7;
  return code >= FIRST_WITHOUT_SPACES && !(code >= 0x3000 && code <= 0x303f) && code < 0xd800;
}
