import type { Selector, TextPositionSelector, TextQuoteSelector } from '#lib/model/selector.ts';
import { findByWords, findByWordsAt, withFormulas } from './by-words.ts';
import { squeeze } from './folded-text.ts';
import { FORMULA } from './formula-signs.ts';
import { type Found, type Near, foundAt, patternOf, placesOf, trustedPlace, unitsOf } from './found.ts';
import type { PageText } from './page-text.ts';
import { elementNear, rangeByPaths } from './path.ts';
import { equalPlaces, placesOfCommon } from './places.ts';
import { isPerfect } from './trust.ts';

/** Formulas that take no more than the rest of the text leave the ends clear. */
const CLEAR = 0.92;
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
  return yield* quoteSteps(page, quote, nearOf(page, position?.start ?? 0, path?.startSelector.value));
}

/** By the path rather than the position: what was put in above the passage does not move it as far along its path. */
function nearOf(page: PageText, point: number, path: string | undefined): Near {
  const near = path === undefined ? null : elementNear(page.document, path);
  const unit = page.unitOfPoint(point);
  if (!near || (!near.isWhole && near.element.contains(page.root)))
    return { from: unit, to: unit, isByPath: false };
  const from = page.unitOf(near.element, 0);
  return { from, to: near.isWhole ? from : page.unitBehind(near.element), isByPath: true };
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
  const places = equalPlaces(text, pattern) ?? placesOfCommon(page, quote.exact, pattern, near.from);
  if (!places.some(isPerfect)) {
    // The same words may stand elsewhere too, while the passage itself has changed.
    yield;
    places.push(...placesOf(text, pattern));
  }
  const place = trustedPlace(places, pattern, text, near);
  if (place?.likeness === 1) return foundAt(page, unitsOf(text, place), 'quote', 1, quote);
  if (!place) {
    yield;
    const found = findByWords(page, quote, near);
    return found && withFormulas(found, quote.exact);
  }
  const units = unitsOf(text, place);
  const hasMoved = place.likeness < CLEAR && FORMULA.test(quote.exact);
  const found =
    (hasMoved ? findByWordsAt(page, quote, units, place.likeness) : null) ??
    foundAt(page, units, 'fuzzy', place.likeness, quote);
  return found && withFormulas(found, quote.exact);
}
