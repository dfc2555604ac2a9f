import type { RangeSelector, TextPositionSelector, XPathSelector } from '#lib/model/selector.ts';
import { HTML, isElement } from '../dom.ts';
import { countPoints, rangeOfUnits, unitOfPoint } from './text-points.ts';

/** As lib/model/selector.ts has it. */
const LONGEST_PATH = 2000;

/**
 * The boundary as an element's XPath and a place in that element's text; null where the path would be too long. The
 * place is a text position without length, since a range selector means the beginnings of its two selectors.
 */
export function pathSelector(container: Node, offset: number): XPathSelector | null {
  const element = isElement(container) ? container : container.parentElement;
  if (!element) return null;
  const value = pathOf(element);
  if (value.length > LONGEST_PATH) return null;
  const doc = element.ownerDocument;
  const before = doc.createRange();
  before.setStart(element, 0);
  before.setEnd(container, offset);
  const point = countPoints(before.toString());
  return { type: 'XPathSelector', value, refinedBy: at(point) };
}

const at = (point: number): TextPositionSelector => ({
  type: 'TextPositionSelector',
  start: point,
  end: point,
});

/** From the nearest element with an id of its own, else from the top. */
function pathOf(element: Element): string {
  const steps: string[] = [];
  for (let node: Element | null = element; node; node = node.parentElement) {
    if (hasOwnId(node)) return [`//*[@id="${node.id}"]`, ...steps].join('/');
    steps.unshift(stepTo(node));
  }
  return `/${steps.join('/')}`;
}

function hasOwnId(element: Element): boolean {
  return /^[^"]+$/.test(element.id) && element.ownerDocument.getElementById(element.id) === element;
}

/** By name among HTML elements; formulas and drawings by number alone, since their names have another namespace. */
function stepTo(element: Element): string {
  const name = isPlainHtml(element) ? element.localName : '*';
  let place = 1;
  for (let other = element.previousElementSibling; other; other = other.previousElementSibling)
    if (isNamed(other, name)) place++;
  return `${name}[${place}]`;
}

function isPlainHtml(element: Element): boolean {
  return (
    element.namespaceURI === HTML &&
    element.ownerDocument.contentType === 'text/html' &&
    /^[a-z][\w-]*$/.test(element.localName)
  );
}

const isNamed = (element: Element, name: string): boolean =>
  name === '*' || (element.namespaceURI === HTML && element.localName === name);

/**
 * The element of a path as `pathSelector` writes it; null for any other XPath. It is read here, and not by the page's
 * XPath engine, which would run whatever an imported file holds.
 */
export function elementAt(doc: Document, path: string): Element | null {
  const { element, isWhole } = follow(doc, path);
  return isWhole ? element : null;
}

/** The element that the path leads to or, where a step of it leads nowhere, the last one before that. */
export function elementNear(doc: Document, path: string): { element: Element; isWhole: boolean } | null {
  const { element, isWhole } = follow(doc, path);
  return element && { element, isWhole };
}

function follow(doc: Document, path: string): { element: Element | null; isWhole: boolean } {
  const [anchor = '', id] = /^\/\/\*\[@id="([^"]+)"\]/.exec(path) ?? [];
  let element: Element | null = id ? doc.getElementById(id) : null;
  if (id && !element) return { element, isWhole: false };
  const [, ...steps] = path.slice(anchor.length).split('/');
  for (const step of steps) {
    const [, name, place] = /^([a-z][\w-]*|\*)\[(\d+)\]$/.exec(step) ?? [];
    const child = name ? childOf(element ?? doc, name, Number(place)) : null;
    if (!child) return { element, isWhole: false };
    element = child;
  }
  return { element, isWhole: element !== null };
}

function childOf(parent: ParentNode, name: string, place: number): Element | null {
  let left = place;
  for (let child = parent.firstElementChild; child; child = child.nextElementSibling)
    if (isNamed(child, name) && --left === 0) return child;
  return null;
}

/** The range between the two places; null when the page has no such places, or in the other order. */
export function rangeByPaths(doc: Document, { startSelector, endSelector }: RangeSelector): Range | null {
  const start = pointAt(doc, startSelector);
  const end = pointAt(doc, endSelector);
  if (!start || !end) return null;
  const range = doc.createRange();
  range.setStart(...start);
  range.setEnd(...end);
  return range.collapsed ? null : range;
}

function pointAt(doc: Document, { value, refinedBy }: XPathSelector): [Node, number] | null {
  const element = elementAt(doc, value);
  if (!element) return null;
  const unit = unitOfPoint(element.textContent, refinedBy?.start ?? 0);
  if (unit === 0) return [element, 0];
  const before = rangeOfUnits(element, 0, unit);
  return before && [before.endContainer, before.endOffset];
}
