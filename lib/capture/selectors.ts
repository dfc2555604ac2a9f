import type { Selector, TextPositionSelector, TextQuoteSelector } from '#lib/model/selector.ts';
import { countPoints, lastPoints, rangeOfUnits, unitOfPoint, unitsOfRange } from './text-points.ts';

/** How many code points of context a quote has: more are taken while it stands in the text more than once. */
const CONTEXTS = [32, 64, 128];

/**
 * Describes a range by a quote and by its position in the root's text, after the W3C Web Annotation Data Model
 * (4.2.4 Text Quote Selector, 4.2.5 Text Position Selector). The text of the root is its plain textContent: all text
 * nodes in document order, hidden text, scripts and white space included, so that any reader finds the same one.
 * Positions count Unicode code points from zero; the end is exclusive. Prefix and suffix have 32 code points, or up
 * to 128 while needed to tell equal quotes apart. Linear in the length of the text.
 */
export function describeRange(range: Range, root: Node): [TextQuoteSelector, TextPositionSelector] {
  const text = root.textContent ?? '';
  const [from, to] = unitsOfRange(range, root);
  const exact = text.slice(from, to);
  const start = countPoints(text.slice(0, from));
  let context = { prefix: '', suffix: '' };
  for (const points of CONTEXTS) {
    context = contextOf(text, from, to, points);
    if (standsOnce(text, context.prefix + exact + context.suffix)) break;
  }
  return [
    { type: 'TextQuoteSelector', exact, ...context },
    { type: 'TextPositionSelector', start, end: start + countPoints(exact) },
  ];
}

function contextOf(
  text: string,
  from: number,
  to: number,
  points: number,
): { prefix: string; suffix: string } {
  const after = text.slice(to, to + 2 * points);
  return {
    prefix: lastPoints(text.slice(Math.max(0, from - 2 * points), from), points),
    suffix: after.slice(0, unitOfPoint(after, points)),
  };
}

function standsOnce(text: string, words: string): boolean {
  const first = text.indexOf(words);
  return text.indexOf(words, first + 1) < 0;
}

/**
 * The range that selectors describe: by position where the quote still stands there, else the quote with the most of
 * its prefix and suffix around it (of equals, the one nearest the old position). Null when the quote is gone.
 */
export function findQuote(root: Node, selectors: readonly Selector[]): Range | null {
  const text = root.textContent ?? '';
  const quote = selectors.find((each) => each.type === 'TextQuoteSelector');
  const position = selectors.find((each) => each.type === 'TextPositionSelector');
  const from = position ? unitOfPoint(text, position.start) : 0;
  if (position) {
    const to =
      from +
      unitOfPoint(
        text.slice(from, from + 2 * (position.end - position.start)),
        position.end - position.start,
      );
    // A position alone cannot tell whether the page has changed under it.
    if (to > from && (!quote || text.slice(from, to) === quote.exact)) return rangeOfUnits(root, from, to);
  }
  if (!quote) return null;
  const found = bestPlace(text, quote, from);
  return found === null ? null : rangeOfUnits(root, found, found + quote.exact.length);
}

function bestPlace(
  text: string,
  { exact, prefix = '', suffix = '' }: TextQuoteSelector,
  near: number,
): number | null {
  let best: { at: number; score: number } | null = null;
  if (exact === '') return null;
  for (let at = text.indexOf(exact); at >= 0; at = text.indexOf(exact, at + 1)) {
    const score = sharedEnd(text, at, prefix) + sharedStart(text, at + exact.length, suffix);
    const nearer = best !== null && Math.abs(at - near) < Math.abs(best.at - near);
    if (!best || score > best.score || (score === best.score && nearer)) best = { at, score };
  }
  return best?.at ?? null;
}

/** How many units before `at` agree with the end of the prefix. */
function sharedEnd(text: string, at: number, prefix: string): number {
  let shared = 0;
  while (shared < prefix.length && text[at - 1 - shared] === prefix[prefix.length - 1 - shared]) shared++;
  return shared;
}

function sharedStart(text: string, at: number, suffix: string): number {
  let shared = 0;
  while (shared < suffix.length && text[at + shared] === suffix[shared]) shared++;
  return shared;
}
