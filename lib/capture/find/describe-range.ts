import type { RangeSelector, TextPositionSelector, TextQuoteSelector } from '#lib/model/selector.ts';
import { pathSelector } from './path.ts';
import { countPoints, lastPoints, unitOfPoint, unitsOfRange } from './text-points.ts';

/** How many code points of context a quote has: more are taken while it stands in the text more than once. */
const CONTEXTS = [64, 128];

/** The range selector is left out where a page nests its elements so deep that the path would be too long to keep. */
export type RangeSelectors = [TextQuoteSelector, TextPositionSelector, ...RangeSelector[]];

/**
 * Describes a range by a quote, by its position in the root's text, and by the paths of the elements in which it begins
 * and ends, after the W3C Web Annotation Data Model (4.2.4 Text Quote Selector, 4.2.5 Text Position Selector, 4.2.9
 * Range Selector). The text of the root is its plain textContent: all text nodes in document order, hidden text,
 * scripts and white space included, so that any reader finds the same one. Positions count Unicode code points from
 * zero; the end is exclusive. Prefix and suffix have 64 code points, or 128 where needed to tell equal quotes
 * apart. Linear in the length of the text.
 */
export function describeRange(range: Range, root: Node): RangeSelectors {
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
    ...pathsOf(range),
  ];
}

function pathsOf(range: Range): RangeSelector[] {
  const startSelector = pathSelector(range.startContainer, range.startOffset);
  const endSelector = pathSelector(range.endContainer, range.endOffset);
  return startSelector && endSelector ? [{ type: 'RangeSelector', startSelector, endSelector }] : [];
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
