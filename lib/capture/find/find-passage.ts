import type { Selector, TextPositionSelector, TextQuoteSelector } from '#lib/model/selector.ts';
import { formulaAround, takeWholeFormulas } from '../maths/formula.ts';
import { type FoldedText, squeeze, wordsOnly } from './folded-text.ts';
import { longPlaces } from './long-places.ts';
import type { PageText } from './page-text.ts';
import { elementNear, rangeByPaths } from './path.ts';
import { type Pattern, type Place, equalPlaces, likePlaces, placesOfCommon } from './places.ts';
import { bestPlace, isPerfect, isTrusted } from './trust.ts';
import { endsAroundWords } from './word-ends.ts';

/** A passage found again. */
export interface Found {
  range: Range;
  /** What led to it: the path, the position, the quote itself, or what is left of the quote. */
  how: 'range' | 'position' | 'quote' | 'fuzzy';
  /** From 0 to 1: how much of the quote stands there. */
  likeness: number;
}

/** A quote so long is told by its ends. */
const LONG = 512;
/** Words without their formulas are compared only if so many units of them are left. */
const FEWEST_LETTERS = 24;
/** Only the formulas have changed where the words are all but the same, or so much more like the old than the whole is. */
const ALL_BUT_SAME = 0.97;
const CLEARLY_MORE = 0.06;
/** Formulas that take no more than the rest of the text leave the ends clear. */
const CLEAR = 0.92;
/** So many units, and as many as it has itself, are looked at around a place for its ends. */
const AROUND = 200;
/** A quote so short may stand anywhere: its neighbours must fit as well. */
const SHORT = 32;

/**
 * The passage that selectors describe, in a page that may have changed since. Null when it is gone, or when what is
 * there is too little like it: a wrong place would be worse than none.
 */
export function findPassage(page: PageText, selectors: readonly Selector[]): Found | null {
  const steps = passageSteps(page, selectors);
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
  }
}

/** The same, stopping wherever the next piece of work may take a few milliseconds. */
export function* passageSteps(page: PageText, selectors: readonly Selector[]): Generator<void, Found | null> {
  const quote = selectors.find((each) => each.type === 'TextQuoteSelector');
  const position = selectors.find((each) => each.type === 'TextPositionSelector');
  const path = selectors.find((each) => each.type === 'RangeSelector');
  const byPath = path ? rangeByPaths(page.document, path) : null;
  if (byPath && (!quote || byPath.toString() === quote.exact))
    return { range: byPath, how: 'range', likeness: 1 };
  const byPosition = position ? findPosition(page, position, quote) : null;
  if (byPosition || !quote) return byPosition;
  // What was put in above it does not move it as far along its path as in the text.
  const element = path ? elementNear(page.document, path.startSelector.value) : null;
  const near = {
    unit: element ? page.unitOf(element, 0) : page.unitOfPoint(position?.start ?? 0),
    isByPath: element !== null,
  };
  return yield* quoteSteps(page, quote, near);
}

/** Where the passage is likely to be. */
interface Near {
  unit: number;
  isByPath: boolean;
}

function findPosition(
  page: PageText,
  { start, end }: TextPositionSelector,
  quote: TextQuoteSelector | undefined,
): Found | null {
  const from = page.unitOfPoint(start);
  const to = page.unitOfPoint(end);
  if (to <= from || (quote && !standsAt(page.text, from, quote))) return null;
  const range = page.rangeOf(from, to);
  return range && { range, how: 'position', likeness: 1 };
}

function standsAt(
  text: string,
  from: number,
  { exact, prefix = '', suffix = '' }: TextQuoteSelector,
): boolean {
  if (!text.startsWith(exact, from)) return false;
  if (exact.length >= SHORT || prefix + suffix === '') return true;
  const to = from + exact.length;
  const before = prefix.slice(-8);
  return text.slice(from - before.length, from) === before || text.startsWith(suffix.slice(0, 8), to);
}

function* quoteSteps(page: PageText, quote: TextQuoteSelector, near: Near): Generator<void, Found | null> {
  const pattern = patternOf(quote, squeeze);
  if (pattern.exact.length === 0) return null;
  yield;
  const text = page.squeezed;
  yield;
  const places = equalPlaces(text, pattern) ?? placesOfCommon(page, quote.exact, pattern, near.unit);
  if (!places.some(isPerfect)) {
    // The same words may stand elsewhere too, while the passage itself has changed.
    yield;
    places.push(...placesOf(text, pattern));
  }
  const place = trustedPlace(places, pattern, text, near);
  if (place?.likeness === 1) return foundAt(page, unitsOf(text, place), 'quote', 1);
  if (!place) {
    yield;
    const found = findByWords(page, quote, near);
    return found && withFormulas(found, quote.exact);
  }
  const units = unitsOf(text, place);
  const hasMoved = place.likeness < CLEAR && FORMULA.test(quote.exact);
  const found =
    (hasMoved ? findByWordsAt(page, quote, units, place.likeness) : null) ??
    foundAt(page, units, 'fuzzy', place.likeness);
  return found && withFormulas(found, quote.exact);
}

/** Takes formulas at the ends whole where the quote has some there, and leaves them out where it has none. */
function withFormulas(found: Found, exact: string): Found {
  const { range } = found;
  const [first, last] = [formulaAround(range.startContainer), formulaAround(range.endContainer)];
  if (first && first !== last && !FORMULA.test(exact.slice(0, AT_AN_END))) range.setStartAfter(first);
  if (last && first !== last && !FORMULA.test(exact.slice(-AT_AN_END))) range.setEndBefore(last);
  takeWholeFormulas(range);
  return found;
}

/** A formula that begins or ends a quote shows itself within so many units. */
const AT_AN_END = 16;

/** Signs that give a formula away. */
const FORMULA = /[\\=^_{}\u2061-\u2064\u2200-\u22ff]|\ud835/;

/** By its words alone, anywhere on the page. */
function findByWords(page: PageText, quote: TextQuoteSelector, near: Near): Found | null {
  const place = placeByWords(page.words, page.text, quote, near);
  return place && foundAt(page, place.units, 'fuzzy', place.likeness);
}

/**
 * The same around a known place, for its ends: where its words are more like the old ones than the whole is, its
 * formulas are set otherwise now, and the words tell better where it begins and ends.
 */
function findByWordsAt(
  page: PageText,
  quote: TextQuoteSelector,
  [start, end]: [number, number],
  likeness: number,
): Found | null {
  const from = Math.max(0, start - (end - start) - AROUND);
  const text = page.text.slice(from, end + (end - start) + AROUND);
  const place = placeByWords(wordsOnly(text), text, quote, { unit: start - from, isByPath: false });
  if (!place || place.likeness < Math.min(ALL_BUT_SAME, likeness + CLEARLY_MORE)) return null;
  const [first, last] = place.units;
  return foundAt(page, [from + first, from + last], 'fuzzy', place.likeness);
}

function placeByWords(words: FoldedText, text: string, quote: TextQuoteSelector, near: Near) {
  const pattern = patternOf(quote, wordsOnly);
  if (pattern.exact.length < FEWEST_LETTERS) return null;
  const place = trustedPlace(placesOf(words, pattern), pattern, words, near);
  if (!place) return null;
  const units = endsAroundWords(text, words, place, { exact: quote.exact, words: pattern.exact });
  return { units, likeness: place.likeness };
}

function patternOf(
  { exact, prefix = '', suffix = '' }: TextQuoteSelector,
  fold: (text: string) => FoldedText,
): Pattern {
  return { before: fold(prefix), exact: fold(exact), after: fold(suffix) };
}

const placesOf = (text: FoldedText, pattern: Pattern): Place[] =>
  pattern.exact.length > LONG ? longPlaces(text, pattern) : likePlaces(text, pattern);

function trustedPlace(
  places: readonly Place[],
  { exact }: Pattern,
  text: FoldedText,
  near: Near,
): Place | null {
  const place = bestPlace(places, {
    length: exact.length,
    near: text.placeOf(near.unit),
    isByPath: near.isByPath,
  });
  return place && isTrusted(place, exact.length) ? place : null;
}

const unitsOf = (text: FoldedText, { start, end }: Place): [number, number] => [
  text.at[start]!,
  text.at[end - 1]! + 1,
];

function foundAt(
  page: PageText,
  [start, end]: [number, number],
  how: Found['how'],
  likeness: number,
): Found | null {
  const range = page.rangeOf(...wholePoints(page.text, start, end));
  return range && { range, how, likeness };
}

/** Moves ends that fall between the halves of a surrogate pair outwards. */
function wholePoints(text: string, start: number, end: number): [number, number] {
  return [isInPair(text, start) ? start - 1 : start, isInPair(text, end) ? end + 1 : end];
}

const isInPair = (text: string, unit: number): boolean =>
  (text.charCodeAt(unit) & 0xfc00) === 0xdc00 && (text.charCodeAt(unit - 1) & 0xfc00) === 0xd800;
