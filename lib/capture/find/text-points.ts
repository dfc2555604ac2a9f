import { isText } from '../dom.ts';

const SHOW_ALL = 0xffffffff;
const SHOW_TEXT_AND_CDATA = 4 + 8;

/** How many Unicode code points the text has; a lone surrogate counts as one. */
export function countPoints(text: string): number {
  let count = text.length;
  for (let index = 1; index < text.length; index++) {
    if (isLow(text.charCodeAt(index)) && isHigh(text.charCodeAt(index - 1))) {
      count--;
      index++;
    }
  }
  return count;
}

/** The UTF-16 offset of the code point at `point`; past the end, the text's length. */
export function unitOfPoint(text: string, point: number): number {
  let unit = 0;
  for (let passed = 0; passed < point && unit < text.length; passed++) unit += widthAt(text, unit);
  return unit;
}

/** The last `points` code points of the text. */
export function lastPoints(text: string, points: number): string {
  let unit = text.length;
  for (let passed = 0; passed < points && unit > 0; passed++)
    unit -= unit > 1 && widthAt(text, unit - 2) === 2 ? 2 : 1;
  return text.slice(unit);
}

function widthAt(text: string, unit: number): number {
  return isHigh(text.charCodeAt(unit)) && isLow(text.charCodeAt(unit + 1)) ? 2 : 1;
}

const isHigh = (unit: number): boolean => unit >= 0xd800 && unit <= 0xdbff;
const isLow = (unit: number): boolean => unit >= 0xdc00 && unit <= 0xdfff;

/**
 * Where the ends of the range lie in the root's textContent, in UTF-16 units. An end outside the root counts as the
 * root's own. One pass over the nodes.
 */
export function unitsOfRange(range: Range, root: Node): [start: number, end: number] {
  const start = pointOf(range.startContainer, range.startOffset);
  const end = pointOf(range.endContainer, range.endOffset);
  const doc = root.ownerDocument ?? (root as Document);
  const walker = doc.createTreeWalker(root, SHOW_ALL);
  let passed = 0;
  let [from, to] = [-1, -1];
  for (let node: Node | null = root; node && to < 0; node = walker.nextNode()) {
    if (node === start.node) from = passed + start.offset;
    if (node === end.node) to = passed + end.offset;
    if (isText(node)) passed += node.length;
  }
  return [Math.max(from, 0), to < 0 ? (root.textContent?.length ?? 0) : to];
}

/** The boundary as the node before whose text (or so many units into it) it lies; null: behind everything. */
function pointOf(container: Node, offset: number): { node: Node | null; offset: number } {
  if (isText(container)) return { node: container, offset };
  const child = container.childNodes[offset];
  if (child) return { node: child, offset: 0 };
  let node: Node | null = container;
  while (node && !node.nextSibling) node = node.parentNode;
  return { node: node?.nextSibling ?? null, offset: 0 };
}

/** The range between two UTF-16 offsets of the root's textContent; null when its text is shorter. */
export function rangeOfUnits(root: Node, start: number, end: number): Range | null {
  const doc = root.ownerDocument ?? (root as Document);
  const walker = doc.createTreeWalker(root, SHOW_TEXT_AND_CDATA);
  const range = doc.createRange();
  let passed = 0;
  let started = false;
  for (let node = walker.nextNode(); isText(node); node = walker.nextNode()) {
    const next = passed + node.length;
    if (!started && start < next) {
      range.setStart(node, start - passed);
      started = true;
    }
    if (started && end <= next) {
      range.setEnd(node, end - passed);
      return range;
    }
    passed = next;
  }
  return null;
}
