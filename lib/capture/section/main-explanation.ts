import { oneLine } from '../limits.ts';
import { FORMULA } from '../maths/formula.ts';
import { roughLength } from '../rough-length.ts';
import { type Judged, judgePage } from './judge-page.ts';
import { levelOf } from '../headings.ts';
import { headingsIn } from './outline.ts';
import type { Stretch } from './parts.ts';

/** Larger pages take seconds; their own word for the main part is trusted instead. */
const MOST_ELEMENTS = 30_000;

/** What a page itself calls its content. */
const NAMED = 'article, main, [role="main"]';

/** How much of what a page calls its content must have been found for the page to be right. */
const ENOUGH = 0.4;

/** Names of what pages put between and below: judged here only where the page's own word is taken. */
const UNLIKELY =
  /comment|share|social|related|sidebar|promo|advert|banner|newsletter|subscri|cookie|crumb|pagina/i;

/**
 * Finds the explanation that a page is about, without what is around it and without what stands between. A copy of the
 * page is judged; what comes back is in the page itself, so that maths and lists are read from there as they are in a
 * selection. Null where nothing looks like an explanation.
 */
export function mainExplanation(doc: Document): Stretch | null {
  const elements = [...doc.querySelectorAll('*')];
  const judged = elements.length > MOST_ELEMENTS ? null : judgePage(doc);
  const found = judged ? elements.filter((_element, index) => judged.numbers.has(index)) : [];
  const inContent = found.filter((element) => doc.body.contains(element) && element !== doc.body);
  if (judged && inContent.length > 0) return stretchOf(doc, judged, inContent);
  const named = doc.querySelector(NAMED);
  return named && { range: over(doc, named) };
}

function stretchOf(doc: Document, judged: Judged, found: readonly Element[]): Stretch {
  const all = [...found, ...headingsOver(doc, found)];
  const kept = new Set<Element>();
  for (const one of all)
    for (let element: Element | null = one; element && !kept.has(element); element = element.parentElement)
      kept.add(element);
  const range = around(doc, all);
  const named = elementOf(range.commonAncestorContainer).closest(NAMED);
  const isNamedRight = !!named && judged.length >= ENOUGH * roughLength(over(doc, named));
  return {
    range: isNamedRight ? over(doc, named) : range,
    isLeftOut(element) {
      if (kept.has(element)) return false;
      const text = oneLine(element.textContent);
      // The line of the author is not always taken out.
      if (text === judged.byline) return true;
      return !judged.texts.has(text) && !(isNamedRight && isLikely(element));
    },
  };
}

/** Whether an element that was passed over is content all the same: short paragraphs and other scripts often are. */
function isLikely(element: Element): boolean {
  if (element.localName === 'h1' || UNLIKELY.test(`${element.className} ${element.id}`)) return false;
  const linked = [...element.querySelectorAll('a[href]')].reduce((sum, link) => sum + lengthOf(link), 0);
  return linked * 3 <= lengthOf(element);
}

/**
 * The headings of what was found: judged by themselves some are taken for less than they are. Not the title, which the
 * clip's page has.
 */
function headingsOver(doc: Document, found: readonly Element[]): Element[] {
  const over: Element[] = [];
  const rest = [...found];
  // From the end; headings of a higher level than `below` have content that is kept.
  let below = 0;
  for (const heading of headingsIn(doc.body, doc.body).reverse()) {
    while (rest.length > 0 && isBehind(rest.at(-1)!, heading)) {
      rest.pop();
      below = Infinity;
    }
    const level = levelOf(heading);
    if (level > 1 && level < below) over.push(heading);
    below = Math.min(below, level);
  }
  return over;
}

const FOLLOWING = 4;

function isBehind(element: Element, heading: Element): boolean {
  return (heading.compareDocumentPosition(element) & FOLLOWING) !== 0;
}

function around(doc: Document, elements: readonly Element[]): Range {
  const range = doc.createRange();
  range.selectNode(elements[0]!);
  for (const element of elements) {
    if (range.comparePoint(element, 0) < 0) range.setStartBefore(element);
    if (range.comparePoint(element, element.childNodes.length) > 0) range.setEndAfter(element);
  }
  return range;
}

function over(doc: Document, element: Element): Range {
  const range = doc.createRange();
  range.selectNodeContents(element);
  return range;
}

function elementOf(node: Node): Element {
  return node.nodeType === 1 ? (node as Element) : node.parentElement!;
}

/** Without formulas, whose markup has their text several times. */
function lengthOf(element: Element): number {
  return element.matches(FORMULA) ? 0 : oneLine(element.textContent).length;
}
