import type { TextQuoteSelector } from '#lib/model/selector.ts';
import { formulaAround, takeWholeFormulas } from '../maths/formula.ts';
import { type FoldedText, wordsOnly } from './folded-text.ts';
import { FORMULA } from './formula-signs.ts';
import { type Found, type Near, foundAt, patternOf, placesOf, trustedPlace } from './found.ts';
import type { PageText } from './page-text.ts';
import { endsAroundWords } from './word-ends.ts';

/** Words without their formulas are compared only if so many units of them are left. */
const FEWEST_LETTERS = 24;
/** Only the formulas have changed where the words are all but the same, or so much more like the old than the whole is. */
const ALL_BUT_SAME = 0.97;
const CLEARLY_MORE = 0.06;
/** So many units, and as many as it has itself, are looked at around a place for its ends. */
const AROUND = 200;
/** A formula that begins or ends a quote shows itself within so many units. */
const AT_AN_END = 16;

/** By its words alone, anywhere on the page. */
export function findByWords(page: PageText, quote: TextQuoteSelector, near: Near): Found | null {
  const place = placeByWords(page.words, page.text, quote, near);
  return place && foundAt(page, place.units, 'fuzzy', place.likeness, quote);
}

/**
 * The same around a known place, for its ends: where its words are more like the old ones than the whole is, its
 * formulas are set otherwise now, and the words tell better where it begins and ends.
 */
export function findByWordsAt(
  page: PageText,
  quote: TextQuoteSelector,
  [start, end]: [number, number],
  likeness: number,
): Found | null {
  const from = Math.max(0, start - (end - start) - AROUND);
  const text = page.text.slice(from, end + (end - start) + AROUND);
  const place = placeByWords(wordsOnly(text), text, quote, {
    from: start - from,
    to: start - from,
    isByPath: false,
  });
  if (!place || place.likeness < Math.min(ALL_BUT_SAME, likeness + CLEARLY_MORE)) return null;
  const [first, last] = place.units;
  return foundAt(page, [from + first, from + last], 'fuzzy', place.likeness, quote);
}

function placeByWords(words: FoldedText, text: string, quote: TextQuoteSelector, near: Near) {
  const pattern = patternOf(quote, wordsOnly);
  if (pattern.exact.length < FEWEST_LETTERS) return null;
  const place = trustedPlace(placesOf(words, pattern), pattern, words, near);
  if (!place) return null;
  const units = endsAroundWords(text, words, place, { exact: quote.exact, words: pattern.exact });
  return { units, likeness: place.likeness };
}

/** Takes formulas at the ends whole where the quote has some there, and leaves them out where it has none. */
export function withFormulas(found: Found, exact: string): Found {
  const { range } = found;
  const [first, last] = [formulaAround(range.startContainer), formulaAround(range.endContainer)];
  if (first && first !== last && !FORMULA.test(exact.slice(0, AT_AN_END))) range.setStartAfter(first);
  if (last && first !== last && !FORMULA.test(exact.slice(-AT_AN_END))) range.setEndBefore(last);
  takeWholeFormulas(range);
  return found;
}
