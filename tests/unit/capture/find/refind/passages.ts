import type { Random } from '#tests/bench/random.ts';

/** Marks of a passage's ends: characters for private use, which no page of the experiment has and no edit touches. */
const START = '\ue000';
const END = '\ue001';

/** A passage as it can be found in two copies of the same page: a paragraph, and boundaries among its children. */
export interface Passage {
  paragraph: number;
  start: [child: number, offset: number];
  end: [child: number, offset: number];
}

const LEAST_LENGTH = 80;
const MOST_LENGTH = 1500;

/** Paragraphs of prose, in the order of the page. */
export function paragraphsOf(doc: Document): Element[] {
  return [...doc.querySelectorAll('p')].filter((paragraph) => {
    const { length } = (paragraph.textContent ?? '').replace(/\s+/g, ' ').trim();
    return length >= LEAST_LENGTH && length <= MOST_LENGTH;
  });
}

/** One passage in each paragraph: all of it, or as often a part from one text of it to another. */
export function choosePassages(doc: Document, random: Random): Passage[] {
  return paragraphsOf(doc).map((element, paragraph) => {
    const all: Passage = { paragraph, start: [0, 0], end: [element.childNodes.length, 0] };
    if (random.next() < 0.5) return all;
    const texts = [...element.childNodes].flatMap((node, child) => (node.nodeType === 3 ? [child] : []));
    if (texts.length === 0) return all;
    const from = random.pick(texts.slice(0, Math.ceil(texts.length / 2)));
    const to = random.pick(texts.filter((child) => child >= from));
    const [first, last] = [element.childNodes[from] as Text, element.childNodes[to] as Text];
    const start = wordStart(first.data, random.below(first.length / 3));
    const end = wordStart(last.data, last.length - random.below(last.length / 3));
    const part: Passage = { paragraph, start: [from, start], end: [to, end] };
    return rangeOf(element, part).toString().trim().length < LEAST_LENGTH / 2 ? all : part;
  });
}

/** The next place at or behind `offset` where a word begins; else the end. */
function wordStart(text: string, offset: number): number {
  const word = /(?<!\S)\S/g;
  word.lastIndex = offset;
  return word.exec(text)?.index ?? text.length;
}

/** The passage in a copy of the page whose paragraph is `element`. */
export function rangeOf(element: Element, { start, end }: Passage): Range {
  const range = element.ownerDocument.createRange();
  range.setStart(...boundary(element, start));
  range.setEnd(...boundary(element, end));
  return range;
}

function boundary(element: Element, [child, offset]: [number, number]): [Node, number] {
  const node = element.childNodes[child];
  return node?.nodeType === 3 ? [node, offset] : [element, child];
}

/** Puts marks at the ends of passages, for the edits to carry along. */
export function mark(doc: Document, passages: readonly Passage[]): void {
  const paragraphs = paragraphsOf(doc);
  const ranges = passages.map((passage) => rangeOf(paragraphs[passage.paragraph]!, passage));
  for (const range of ranges) {
    const end = range.cloneRange();
    end.collapse(false);
    end.insertNode(doc.createTextNode(END));
    range.insertNode(doc.createTextNode(START));
  }
}

export const isMark = (node: Node): boolean => node.nodeValue === START || node.nodeValue === END;

/** Takes the marks out and tells where they stood: the start and end of each passage in the root's text. */
export function takeMarks(root: Node): [start: number, end: number][] {
  const walker = root.ownerDocument!.createTreeWalker(root, 4);
  const [starts, ends]: [number[], number[]] = [[], []];
  const marks: Text[] = [];
  let passed = 0;
  for (let node = walker.nextNode() as Text | null; node; node = walker.nextNode() as Text | null) {
    if (isMark(node)) {
      marks.push(node);
      (node.data === START ? starts : ends).push(passed);
    } else {
      passed += node.length;
    }
  }
  for (const node of marks) node.remove();
  return starts.map((start, index) => [start, ends[index]!]);
}
