import { isKeptAttribute, isKeptElement } from './allow-list.ts';
import { HTML, isElement, moveChildren, unwrap } from './dom.ts';
import { markupOf, parseMarkup } from './markup.ts';
import { tidy } from './tidy.ts';

/** Cleaning and parsing settle in two or three rounds; more means markup made to keep them busy. */
const MOST_ROUNDS = 8;

/** CDATA sections, processing instructions and comments. */
const SHOW_OTHER = 8 + 64 + 128;

/**
 * A passage with nothing in it but the elements and attributes of the allow-list (./allow-list.ts): no link, no
 * address, no style, no identifier, no handler. Cleaning what is clean changes nothing.
 *
 * Works in a document without a view, where no picture loads and no handler runs, and on nodes; then writes them out,
 * parses and cleans again until that changes nothing, so that no later parser reads the markup differently.
 *
 * This is the part that runs in the student's page, where every byte counts; what is shown later passes
 * `cleanPassage` (./sanitise.ts) besides.
 *
 * @param source markup, or nodes, which are copied
 * @param doc any document of the window that the work is done in
 * @param also one more cleaner for each round, which may take away but not add
 */
export function allowOnly(
  source: DocumentFragment | string,
  doc: Document,
  also?: (root: HTMLElement) => void,
): DocumentFragment {
  const inert = doc.implementation.createHTMLDocument('');
  let before = typeof source === 'string' ? source : null;
  let root = rootOf(source, inert);
  for (let round = 1; ; round++) {
    tidy(root);
    enforce(root);
    also?.(root);
    root.normalize();
    const after = markupOf(root);
    const parsed = after === before || round === MOST_ROUNDS ? null : parseMarkup(after, inert);
    if (!parsed) break;
    root = parsed;
    before = after;
  }
  const clean = inert.createDocumentFragment();
  moveChildren(root, clean);
  return clean;
}

/** The markup of a cleaned passage, for storing. */
export function serialise(fragment: DocumentFragment): string {
  const inert = fragment.ownerDocument.implementation.createHTMLDocument('');
  const holder = inert.createElement('span');
  holder.append(inert.importNode(fragment, true));
  return markupOf(holder);
}

function rootOf(source: DocumentFragment | string, inert: Document): HTMLElement {
  const parsed = typeof source === 'string' ? parseMarkup(source, inert) : null;
  // Where parsing is forbidden nodes are clean all the same, and a string is nothing but text.
  if (parsed) return parsed;
  const root = inert.createElement('span');
  root.append(typeof source === 'string' ? source : inert.importNode(source, true));
  return root;
}

function enforce(root: HTMLElement): void {
  const others: ChildNode[] = [];
  const walker = root.ownerDocument.createTreeWalker(root, SHOW_OTHER);
  for (let node = walker.nextNode(); node; node = walker.nextNode()) others.push(node as ChildNode);
  for (const other of others) other.remove();
  for (const element of root.querySelectorAll('*')) {
    if (!isKeptElement(element) || !isInPlace(element)) dissolve(element);
    else if (element.attributes.length > 0) stripAttributes(element);
  }
}

/** MathML stands within <math>, <math> within HTML, and no HTML within MathML: as a parser would have it. */
function isInPlace(element: Element): boolean {
  const within = isElement(element.parentNode) && element.parentNode.namespaceURI === HTML;
  return within === (element.namespaceURI === HTML || element.localName === 'math');
}

function dissolve(element: Element): void {
  if (element.namespaceURI === HTML) unwrap(element);
  else element.replaceWith(element.textContent);
}

function stripAttributes(element: Element): void {
  for (const attribute of [...element.attributes]) {
    if (!isKeptAttribute(element, attribute)) element.removeAttributeNode(attribute);
  }
}
