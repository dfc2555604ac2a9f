import { isText } from '../dom.ts';
import { type FoldedText, type Span, squeeze, wordsOnly } from './folded-text.ts';
import { unitOfPoint } from './text-points.ts';

const SHOW_TEXT_AND_CDATA = 4 + 8;
const POINTS_PER_MARK = 256;
/** Code, and what only browsers without scripts show. Scripts of MathJax 2 hold the formulas that it shows. */
const SILENT = 'script:not([type^="math/"]), style, noscript';

/**
 * The text of a page as it stands at this moment, with what finding needs of it; each part is made once, when first
 * asked for. A page that changes has to be read anew.
 */
export class PageText {
  readonly root: Node;
  /** The root's textContent. */
  readonly text: string;
  readonly #nodes: Text[] = [];
  readonly #starts: number[] = [];
  #squeezed: FoldedText | undefined;
  #words: FoldedText | undefined;
  readonly #silent: Span[] = [];
  #isPlain: boolean | undefined;
  #marks: number[] | undefined;

  /** Use {@link readPageText}. */
  constructor(root: Node) {
    this.root = root;
    const walker = this.document.createTreeWalker(root, SHOW_TEXT_AND_CDATA);
    const elements = (root as Element).querySelectorAll?.(SILENT) ?? [];
    const silent = new Set<Node>(Array.from(elements).flatMap(({ childNodes }) => [...childNodes]));
    const parts: string[] = [];
    let passed = 0;
    for (let node = walker.nextNode(); isText(node); node = walker.nextNode()) {
      const { data } = node;
      if (data === '') continue;
      this.#nodes.push(node);
      this.#starts.push(passed);
      if (silent.has(node)) this.#silent.push([passed, passed + data.length]);
      parts.push(data);
      passed += data.length;
    }
    // The same as textContent, but in the engine's own memory, where its characters are read several times as fast.
    this.text = parts.join('');
  }

  get document(): Document {
    return this.root.ownerDocument ?? (this.root as Document);
  }

  get squeezed(): FoldedText {
    return (this.#squeezed ??= squeeze(this.text, this.#silent));
  }

  get words(): FoldedText {
    return (this.#words ??= wordsOnly(this.text, this.#silent));
  }

  /** The UTF-16 offset of a code point of the text. */
  unitOfPoint(point: number): number {
    this.#isPlain ??= !/[\ud800-\udbff]/.test(this.text);
    if (this.#isPlain) return Math.min(point, this.text.length);
    const marks = (this.#marks ??= markPoints(this.text));
    const mark = Math.min(Math.floor(point / POINTS_PER_MARK), marks.length - 1);
    const unit = marks[mark]!;
    const left = point - mark * POINTS_PER_MARK;
    return unit + unitOfPoint(this.text.slice(unit, unit + 2 * left), left);
  }

  /** The UTF-16 offset at which a text node begins or, between nodes, at which the next one does. */
  unitOf(boundary: Node, offset: number): number {
    const node = isText(boundary) ? boundary : (boundary.childNodes[offset] ?? boundary);
    let [low, high] = [0, this.#nodes.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.#nodes[middle]!.compareDocumentPosition(node) & 4) low = middle + 1;
      else high = middle;
    }
    const start = this.#starts[low] ?? this.text.length;
    return this.#nodes[low] === boundary ? start + offset : start;
  }

  /** The UTF-16 offset at which the element ends. */
  unitBehind(element: Element): number {
    let node: Node | null = element;
    while (node && !node.nextSibling) node = node.parentNode;
    return node?.nextSibling ? this.unitOf(node.nextSibling, 0) : this.text.length;
  }

  /** The range between two UTF-16 offsets; null where the page has meanwhile changed under this text. */
  rangeOf(start: number, end: number): Range | null {
    const first = this.#nodeAt(start);
    const last = this.#nodeAt(end - 1);
    if (first < 0 || last < 0) return null;
    const [from, to] = [start - this.#starts[first]!, end - this.#starts[last]!];
    const [node, other] = [this.#nodes[first]!, this.#nodes[last]!];
    if (!node.isConnected || !other.isConnected || from > node.length || to > other.length) return null;
    const range = this.document.createRange();
    range.setStart(node, from);
    range.setEnd(other, to);
    return range;
  }

  #nodeAt(unit: number): number {
    let [low, high] = [0, this.#starts.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.#starts[middle]! <= unit) low = middle + 1;
      else high = middle;
    }
    return low - 1;
  }
}

/** The UTF-16 offsets of every 256th code point. */
function markPoints(text: string): number[] {
  const marks = [0];
  let points = 0;
  for (let unit = 0; unit < text.length; points++) {
    if (points > 0 && points % POINTS_PER_MARK === 0) marks.push(unit);
    const code = text.charCodeAt(unit);
    const isPair = code >= 0xd800 && code <= 0xdbff && (text.charCodeAt(unit + 1) & 0xfc00) === 0xdc00;
    unit += isPair ? 2 : 1;
  }
  return marks;
}

/** Reads the text under a node, the page's body as a rule, for any number of passages to be found in. */
export function readPageText(root: Node): PageText {
  return new PageText(root);
}
