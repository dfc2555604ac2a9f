import { carry, isElement, isText } from './dom.ts';
import { FORMULA, TEX_SCRIPT } from './maths/formula.ts';
import { type RangeEnds, endsOf, forEachChild, startChild } from './range-ends.ts';
import type { Look } from './visibility.ts';

/** Gives what stands in the copy for a picture that is kept (./pictures/spot.ts); null for any other element. */
export type PictureOf = (element: Element, inert: Document) => Element | null;

/** Attributes that say something of the content; no other is copied. */
const TELLING = 'lang dir start value colspan rowspan scope title alt role hidden aria-hidden'.split(' ');

const FOLLOWING = 4;
const CONTAINED = 16;

/**
 * Copies what the range holds into a document without a view: formulas whole, hidden elements not at all, and neutral
 * elements as <div> or <span> after their layout. Unlike Range.cloneContents it loads no picture, makes no custom
 * element of the page's, and keeps the count of a list that begins in the middle.
 *
 * @param range ends that lie in a formula must have been moved out of it (./maths/formula.ts)
 */
export function copyRange(
  range: Range,
  inert: Document,
  lookOf: (element: Element) => Look,
  pictureOf: PictureOf = () => null,
): DocumentFragment {
  const fragment = inert.createDocumentFragment();
  const work = { range, inert, lookOf, pictureOf, ends: endsOf(range) };
  const top = range.commonAncestorContainer;
  if (isText(top)) copyNode(top, fragment, work);
  else forEachChild(top, work.ends, (child) => copyNode(child, fragment, work));
  return fragment;
}

interface Work {
  range: Range;
  inert: Document;
  lookOf: (element: Element) => Look;
  pictureOf: PictureOf;
  ends: RangeEnds;
}

function copyNode(node: Node, into: Node, work: Work): void {
  const { range, inert, lookOf, pictureOf, ends } = work;
  if (isText(node)) into.appendChild(inert.createTextNode(ends.slice(node)));
  if (!isElement(node)) return;
  const picture = pictureOf(node, inert);
  if (picture) {
    into.appendChild(picture);
    return;
  }
  const isFormula = node.matches(FORMULA) || node.matches(TEX_SCRIPT);
  // Typesetters hide the MathML that they mean for screen readers; a picture that is hidden is not in the page at all.
  if (isFormula && (node.localName !== 'img' || lookOf(node) !== 'hidden')) {
    into.appendChild(inert.importNode(node, true));
    return;
  }
  const look = lookOf(node);
  if (look === 'hidden') return;
  const shell = into.appendChild(shellOf(node, inert, range, look));
  forEachChild(node, ends, (child) => copyNode(child, shell, work));
}

/** A copy of the element alone; a list that the range enters later than at its first item goes on counting. */
export function shellOf(element: Element, inert: Document, range: Range, look: Look = null): Element {
  const name = look === 'block' ? 'div' : look === 'inline' ? 'span' : element.localName;
  const shell = inert.createElementNS(element.namespaceURI, name);
  carry(element, shell, TELLING);
  if (name === 'ol') countOn(element, shell, startChild(range, element));
  return shell;
}

function countOn(list: Element, shell: Element, first: Node | null): void {
  if (!first) return;
  let number = Number(list.getAttribute('start') ?? 1);
  for (const item of list.children) {
    if (!(item.compareDocumentPosition(first) & FOLLOWING)) break;
    if (item.compareDocumentPosition(first) & CONTAINED) break;
    if (item.localName === 'li') number = Number(item.getAttribute('value') ?? number) + 1;
  }
  if (number !== 1) shell.setAttribute('start', String(number));
}
