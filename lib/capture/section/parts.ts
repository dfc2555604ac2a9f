import { StudentError } from '#lib/model/student-error.ts';
import { serialise } from '../allow-only.ts';
import { describeRange } from '../find/describe-range.ts';
import type { PictureOf } from '../copy-range.ts';
import { headingsAbove } from '../headings.ts';
import { LONGEST_PASSAGE, LONGEST_PASSAGE_HTML } from '../limits.ts';
import { picturePlaces } from '../pictures/places.ts';
import { plainText } from '../plain-text.ts';
import { type Capture, contentOf } from '../read-selection.ts';
import { roughLength } from '../rough-length.ts';
import { BLOCK, splitRange } from './split.ts';

/** What may be laid out for the student to drop parts from, as a multiple of what a clip holds. */
const MOST_LENGTHS = 3;

/** A part of a page that can be kept or dropped as a whole. */
export interface Part {
  /** Where it stands in the page. */
  range: Range;
  /** Clean, as it is shown. */
  nodes: DocumentFragment;
  text: string;
  html: string;
}

/** What of a page is to be split, and which elements of it are passed over. */
export interface Stretch {
  range: Range;
  isLeftOut?: ((element: Element) => boolean) | undefined;
}

/**
 * Reads the parts of a stretch of the page, in its order; those without a word, a formula or a picture are left out.
 *
 * @param pictureOf finds the pictures that are kept; without it their text is
 * @throws StudentError `errorSelectionEmpty`; `errorStretchTooLong` for what nobody would drop down to a clip
 */
export function readParts(
  doc: Document,
  { range, isLeftOut = () => false }: Stretch,
  pictureOf?: PictureOf,
): Part[] {
  const ranges = splitRange(range, isLeftOut);
  const length = ranges.reduce((sum, each) => sum + roughLength(each), 0);
  if (length > MOST_LENGTHS * LONGEST_PASSAGE)
    throw new StudentError('errorStretchTooLong', length, LONGEST_PASSAGE);
  const parts = ranges
    .map((each) => readPart(doc, each, pictureOf))
    .filter(({ text, nodes }) => text !== '' || picturePlaces(nodes).length > 0);
  if (parts.length === 0) throw new StudentError('errorSelectionEmpty');
  return parts;
}

function readPart(doc: Document, range: Range, pictureOf?: PictureOf): Part {
  const nodes = contentOf([range], doc, pictureOf);
  if (![...nodes.children].some((child) => child.matches(BLOCK))) {
    // Loose text would run into the part behind it.
    const paragraph = nodes.ownerDocument.createElement('p');
    paragraph.append(nodes);
    nodes.append(paragraph);
  }
  return { range, nodes, text: plainText(nodes), html: serialise(nodes) };
}

/** The passage that parts make together. */
export function passageOfParts(parts: readonly Part[]): Capture['passage'] {
  const texts = parts.map(({ text }) => text).filter((text) => text !== '');
  return { text: texts.join('\n'), html: parts.map(({ html }) => html).join('') };
}

/** How long a passage is and may be, where it is too long to keep; null where it can be kept. */
export function excessOf({ text, html }: Capture['passage']): [length: number, limit: number] | null {
  if (text.length > LONGEST_PASSAGE) return [text.length, LONGEST_PASSAGE];
  return html.length > LONGEST_PASSAGE_HTML ? [html.length, LONGEST_PASSAGE_HTML] : null;
}

/** Selectors of the parts up to the first that was dropped, since a selector means one run of text. */
export function selectorsOfParts(doc: Document, parts: readonly Part[]): Capture['selectors'] {
  const [first, ...rest] = parts.map(({ range }) => range);
  const run = first!.cloneRange();
  for (const range of rest) {
    const between = doc.createRange();
    between.setStart(run.endContainer, run.endOffset);
    between.setEnd(range.startContainer, range.startOffset);
    if (between.toString().trim() !== '') break;
    run.setEnd(range.endContainer, range.endOffset);
  }
  return describeRange(run, doc.body);
}

/** The headings above the first part; if it is a heading itself, those above that. None where there is no part. */
export function headingsOfParts(doc: Document, [first]: readonly Part[]): string[] {
  if (!first) return [];
  const range = first.range.cloneRange();
  const node = range.startContainer.childNodes[range.startOffset];
  if (node) range.setStart(node, 0);
  return headingsAbove(doc, range);
}
