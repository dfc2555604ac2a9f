import { isBlank, isElement } from '../dom.ts';
import { FORMULA, TEX_SCRIPT } from '../maths/formula.ts';
import { type RangeEnds, endsOf, forEachChild } from '../range-ends.ts';
import { type Look, looker } from '../visibility.ts';
import { BESIDE } from './outline.ts';

/** What stands in a passage as one part, however much is in it. */
const PART = 'p, h1, h2, h3, h4, h5, h6, ul, ol, dl, table, blockquote, pre, figure, [role="heading"]';

export const BLOCK =
  `${PART}, div, section, article, main, header, footer, aside, nav, address, details, summary, form, center, ` +
  'hgroup, search, fieldset, dialog, tbody, tr, td, li';

/** A table that lays out a page has its headings in it, or further tables. */
const LAID_OUT = 'h1, h2, h3, h4, h5, h6, table';

/** A list of terms in which one is told in several paragraphs is no list but a text, as manuals write them. */
const TOLD_AT_LENGTH = 'dd > p ~ p';

const UNREAD = 'script, style, noscript, template, button, input, select, textarea, hr';

/**
 * Splits the content of a range into its parts in the page: headings, paragraphs, lists, tables, figures, and each run
 * of loose text and formulas between them. What is hidden or stands beside the content is no part.
 *
 * @param range with ends that lie in no formula
 * @param isLeftOut for each element that would be a part or may hold some, whether it is to be passed over
 */
export function splitRange(range: Range, isLeftOut: (element: Element) => boolean): Range[] {
  const { commonAncestorContainer: top, startContainer } = range;
  const ends = endsOf(range);
  const lookOf = looker(startContainer.ownerDocument!.defaultView, top);
  const parts: Range[] = [];
  // Loose content that the next piece of it joins.
  let run: Range | null = null;
  const visitBlock = (element: Element): void => {
    run = null;
    const isBeside = element.matches(BESIDE) && !element.contains(startContainer);
    if (isBeside || isLeftOut(element)) return;
    if (isPart(element, ends)) parts.push(over(element));
    else forEachChild(element, ends, visit);
    run = null;
  };
  const visit = (node: Node): void => {
    const kind = kindOf(node, lookOf);
    if (kind === 'unread') return;
    if (kind === 'block') visitBlock(node as Element);
    else if (run) run.setEndAfter(node);
    else if (kind === 'formula' || !isBlank(node)) parts.push((run = over(node)));
  };
  forEachChild(top, ends, visit);
  return parts;
}

function kindOf(node: Node, lookOf: (element: Element) => Look): 'unread' | 'block' | 'formula' | 'loose' {
  if (!isElement(node)) return 'loose';
  if (node.matches(FORMULA) || node.matches(TEX_SCRIPT)) return 'formula';
  const look = node.matches(UNREAD) ? 'hidden' : lookOf(node);
  if (look === 'hidden') return 'unread';
  return look === 'block' || node.matches(BLOCK) || node.querySelector(BLOCK) ? 'block' : 'loose';
}

/** Whether the element is one part: not if the range ends inside it, and not if it lays out a page. */
function isPart(element: Element, ends: RangeEnds): boolean {
  if (!element.matches(PART) || ends.first(element) !== element.firstChild || ends.stop(element))
    return false;
  if (element.localName === 'dl') return !element.querySelector(TOLD_AT_LENGTH);
  return element.localName !== 'table' || !element.querySelector(LAID_OUT);
}

function over(node: Node): Range {
  const range = node.ownerDocument!.createRange();
  range.selectNode(node);
  return range;
}
