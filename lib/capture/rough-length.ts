import { isElement, isText } from './dom.ts';
import { FORMULA } from './maths/formula.ts';
import { type RangeEnds, endsOf, forEachChild } from './range-ends.ts';

const UNREAD = `script, style, noscript, template, textarea, select, svg, ${FORMULA}`;

/**
 * About how long the range's text is, in UTF-16 units with white space collapsed and formulas left out: one pass that
 * copies no node, to refuse a whole library before any work is done on it.
 */
export function roughLength(range: Range): number {
  return lengthOf(range.commonAncestorContainer, endsOf(range));
}

function lengthOf(node: Node, ends: RangeEnds): number {
  if (isText(node)) return ends.slice(node).replace(/\s+/g, ' ').length;
  if (isElement(node) && node.matches(UNREAD)) return 0;
  let length = 0;
  forEachChild(node, ends, (child) => (length += lengthOf(child, ends)));
  return length;
}
