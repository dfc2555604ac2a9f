import type { TextQuoteSelector } from '#lib/model/selector.ts';
import type { FoldedText } from './folded-text.ts';
import type { Stretch } from './places.ts';

/** A formula set otherwise may take so many times the room, and so many units more. */
const MOST_TIMES = 4;
const MOST_MORE = 16;

/**
 * Where a passage whose words were found begins and ends, with what the quote has before its first word and behind its
 * last. Where that stands there to the letter, so much of it; else (a formula, set otherwise now) what is there up to
 * the next word.
 */
export function endsAroundWords(
  text: string,
  words: FoldedText,
  { start, end }: Stretch,
  quote: { exact: string; words: FoldedText },
): [start: number, end: number] {
  const first = words.at[start]!;
  const last = words.at[end - 1]! + 1;
  const before = text.slice(start > 0 ? words.at[start - 1]! + 1 : 0, first);
  const behind = text.slice(last, end < words.length ? words.at[end]! : text.length);
  const lead = quote.exact.slice(0, quote.words.at[0]);
  const rest = quote.exact.slice(quote.words.at[quote.words.length - 1]! + 1);
  return [first - unitsOf(mirrored(lead), mirrored(before)), last + unitsOf(rest, behind)];
}

/** How many units at the start of `gap` stand for `signs`. */
function unitsOf(signs: string, gap: string): number {
  const same = unitsOfSame(signs, gap) ?? unitsToLast(signs, gap);
  return same ?? Math.min(gap.trimEnd().length, signs.length * MOST_TIMES + MOST_MORE);
}

/** Up to the short word that comes last; null where none does. */
function unitsToLast(signs: string, gap: string): number | null {
  const [word] = /(?<=\s)\p{L}{1,2}\s*$/u.exec(signs) ?? [];
  const at = word ? gap.search(new RegExp(`(?<=\\s)${word.trim()}(?!\\S)`)) : -1;
  return word && at >= 0 ? at + word.trim().length : null;
}

/** The same where the signs stand there to the letter, white space aside; null where they do not. */
function unitsOfSame(signs: string, gap: string): number | null {
  let unit = 0;
  for (const sign of signs.replace(/\s+/g, '')) {
    while (/\s/.test(gap.charAt(unit))) unit++;
    if (!gap.startsWith(sign, unit)) return null;
    unit += sign.length;
  }
  return unit;
}

const mirrored = (text: string): string => [...text].reverse().join('');

/** So far an end may be from the nearest word's. */
const FAR = 12;

/** Moves ends that fall into words to the nearest end of the word, where the quote begins and ends with whole words. */
export function atWholeWords(
  text: string,
  [start, end]: [start: number, end: number],
  { exact, prefix = '', suffix = '' }: TextQuoteSelector,
): [start: number, end: number] {
  const first = isInWord(prefix + exact, prefix.length) ? start : nearestEnd(text, start);
  const last = isInWord(exact + suffix, exact.length) ? end : nearestEnd(text, end);
  return first < last ? [first, last] : [start, end];
}

function nearestEnd(text: string, unit: number): number {
  for (let away = 0; away <= FAR; away++) {
    if (!isInWord(text, unit - away)) return unit - away;
    if (!isInWord(text, unit + away)) return unit + away;
  }
  return unit;
}

/** Scripts without spaces have no such words. */
const isInWord = (text: string, unit: number): boolean =>
  LETTER.test(text.charAt(unit - 1)) && LETTER.test(text.charAt(unit));

const LETTER = /(?![\u2e80-\uffff])[\p{L}\p{M}\p{N}]/u;
