import type { TextQuoteSelector } from '#lib/model/selector.ts';
import { type FoldedText, squeeze } from './folded-text.ts';
import { longPlaces } from './long-places.ts';
import type { PageText } from './page-text.ts';
import { type Pattern, type Place, likePlaces } from './places.ts';
import { bestPlace, isTrusted } from './trust.ts';
import { atWholeWords } from './word-ends.ts';

/** A passage found again. */
export interface Found {
  range: Range;
  /** What led to it: the path, the position, the quote itself, or what is left of the quote. */
  how: 'range' | 'position' | 'quote' | 'fuzzy';
  /** From 0 to 1: how much of the quote stands there. */
  likeness: number;
}

/** Between which units of the page's text the passage is likely to begin. */
export interface Near {
  from: number;
  to: number;
  /** Told by the path of its element, and not by its position alone, which whatever is put in above it shifts. */
  isByPath: boolean;
}

/** A quote so long is told by its ends. */
const LONG = 512;

/** The quote as the page is folded. */
export function patternOf(
  { exact, prefix = '', suffix = '' }: TextQuoteSelector,
  fold: (text: string) => FoldedText,
): Pattern {
  return { before: fold(prefix), exact: fold(exact), after: fold(suffix), setsEnds: fold === squeeze };
}

/** Places like the quote. */
export const placesOf = (text: FoldedText, pattern: Pattern): Place[] =>
  pattern.exact.length > LONG ? longPlaces(text, pattern) : likePlaces(text, pattern);

/** The place that fits best; null when even that is too little like the quote. */
export function trustedPlace(
  places: readonly Place[],
  { exact }: Pattern,
  text: FoldedText,
  near: Near,
): Place | null {
  const place = bestPlace(places, {
    length: exact.length,
    from: text.placeOf(near.from),
    to: text.placeOf(near.to),
    isByPath: near.isByPath,
  });
  return place && isTrusted(place, exact.length) ? place : null;
}

/** The place in the text that was folded. */
export const unitsOf = (text: FoldedText, { start, end }: Place): [number, number] => [
  text.at[start]!,
  text.at[end - 1]! + 1,
];

/** The range there; null where the page has changed meanwhile. */
export function foundAt(
  page: PageText,
  units: [start: number, end: number],
  how: 'quote' | 'fuzzy',
  likeness: number,
  quote: TextQuoteSelector,
): Found | null {
  const [start, end] = how === 'quote' ? units : atWholeWords(page.text, units, quote);
  const range = page.rangeOf(...wholePoints(page.text, start, end));
  return range && { range, how, likeness };
}

/** Moves ends that fall between the halves of a surrogate pair outwards. */
function wholePoints(text: string, start: number, end: number): [number, number] {
  return [isInPair(text, start) ? start - 1 : start, isInPair(text, end) ? end + 1 : end];
}

const isInPair = (text: string, unit: number): boolean =>
  (text.charCodeAt(unit) & 0xfc00) === 0xdc00 && (text.charCodeAt(unit - 1) & 0xfc00) === 0xd800;
