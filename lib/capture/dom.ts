export const MATHML = 'http://www.w3.org/1998/Math/MathML';
export const HTML = 'http://www.w3.org/1999/xhtml';

const ELEMENT = 1;
const TEXT = 3;
const CDATA = 4;

/** Told by number, since a node of another window is no instance of this one's Element. */
export function isElement(node: Node | null | undefined): node is Element {
  return node?.nodeType === ELEMENT;
}

export function isText(node: Node | null | undefined): node is Text {
  return node?.nodeType === TEXT || node?.nodeType === CDATA;
}

/** Whether nothing in the node would be seen: no text, no formula, no picture, no rule. */
export function isBlank(node: Node): boolean {
  if (node.textContent?.trim()) return false;
  return !isElement(node) || !(node.matches(SEEN) || node.querySelector(SEEN));
}

const SEEN = 'math, hr, img[data-picture], img[alt]:not([alt=""])';

/** Puts the element's children in its place. */
export function unwrap(element: Element): void {
  const { parentNode } = element;
  while (parentNode && element.firstChild) parentNode.insertBefore(element.firstChild, element);
  element.remove();
}

/** The same content in an element of another name; of the attributes only language and direction go along. */
export function rename(element: Element, name: string): Element {
  const other = element.ownerDocument.createElementNS(element.namespaceURI, name);
  carry(element, other, ['lang', 'dir']);
  moveChildren(element, other);
  element.replaceWith(other);
  return other;
}

/** One by one: a page may have more children in one place than a call may have arguments. */
export function moveChildren(from: Node, to: Node): void {
  while (from.firstChild) to.appendChild(from.firstChild);
}

/** Copies the named attributes that `from` has. */
export function carry(from: Element, to: Element, names: readonly string[]): void {
  for (const name of names) {
    const value = from.getAttribute(name);
    if (value !== null) to.setAttribute(name, value);
  }
}
