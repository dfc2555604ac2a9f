import { isElement } from '../dom.ts';
import { levelOf } from '../headings.ts';
import { CONTAINER, headingsIn } from './outline.ts';

/**
 * The section that the range stands in: from the nearest heading above to the next heading of the same or a higher
 * level, inside the article, main part or aside that holds the range. Without a heading above it is that whole
 * container; without a container, all that the heading and the range have around them in common.
 */
export function sectionAround(range: Range, doc: Document): Range {
  const common = elementOf(range.commonAncestorContainer);
  const container = common.closest(CONTAINER);
  const top = container ?? doc.body;
  const headings = headingsIn(top, range.startContainer);
  const section = doc.createRange();
  const above = headings.filter((heading) => isAtOrBefore(heading, range)).at(-1);
  if (!above) {
    section.selectNodeContents(top);
    return section;
  }
  const next = headings.find((heading) => levelOf(heading) <= levelOf(above) && isBehind(heading, range));
  section.setStartBefore(above);
  if (next) section.setEndBefore(next);
  else section.setEnd(...endOf(container ?? sharedBy(above, common)));
  return section;
}

/** Whether the heading begins before the range does, or the range begins in it. */
function isAtOrBefore(heading: Element, range: Range): boolean {
  return range.comparePoint(heading, 0) < 0 || heading.contains(range.startContainer);
}

function isBehind(heading: Element, range: Range): boolean {
  return range.comparePoint(heading, 0) > 0;
}

/** The lowest element that holds both. */
function sharedBy(element: Element, other: Element): Element {
  let shared = other;
  while (!shared.contains(element) && shared.parentElement) shared = shared.parentElement;
  return shared;
}

function endOf(element: Element): [Node, number] {
  return [element, element.childNodes.length];
}

function elementOf(node: Node): Element {
  return isElement(node) ? node : node.parentElement!;
}
