import type { Passage } from '#lib/model/clip.ts';
import type { Selector } from '#lib/model/selector.ts';
import { StudentError } from '#lib/model/student-error.ts';
import { type Wrappers, carryLanguage, wrapInContext } from './context.ts';
import { type PictureOf, copyRange } from './copy-range.ts';
import { isBlank, isElement } from './dom.ts';
import { takeWholeFormulas } from './maths/formula.ts';
import { headingsAbove } from './headings.ts';
import { LONGEST_PASSAGE, LONGEST_PASSAGE_HTML } from './limits.ts';
import { convertMaths } from './maths/convert-maths.ts';
import { type Page, readPlace } from './page/place.ts';
import { plainText } from './plain-text.ts';
import { roughLength } from './rough-length.ts';
import { allowOnly, serialise } from './allow-only.ts';
import { describeRange } from './find/describe-range.ts';
import { inPage, selectedIn } from './selected.ts';
import { looker } from './visibility.ts';

/** A picture in the passage's markup. */
const PICTURE_PLACE = /<img data-picture=/;

export interface Capture {
  /** The page's document, or that of the frame in which the passage is. */
  doc: Document;
  passage: Passage;
  /** Quote and position of `range` in the text of the page's body; none where it holds pictures and no text. */
  selectors: Selector[];
  /** Headings above the passage, nearest first. */
  headings: string[];
  page: Page;
  /** The first selected range, with formulas at its ends taken whole. A copy: the student's selection stays. */
  range: Range;
  /** All selected ranges in document order; more than one only where the browser lets several be made. */
  ranges: Range[];
}

/**
 * Reads what the student has selected. Where there are several ranges (a browser may let words be added, or make one
 * range of each table cell), the passage joins all of them in document order, since that is what the student sees
 * selected; the selectors describe the first, since a selector means one run of text.
 *
 * @param pictureOf finds the pictures that are kept; without it their text is
 * @throws StudentError `errorSelectionEmpty`; `errorSelectionInField` when only the text of a form field is selected;
 *   `errorSelectionInFrame`; `errorSelectionTooLong` with length and limit in characters; `errorPageAddress`
 */
export function readSelection(doc: Document, pictureOf?: PictureOf): Capture {
  const selected = selectedIn(doc);
  if (selected.ranges.length === 0 && isFieldSelected(doc)) throw new StudentError('errorSelectionInField');
  return readRanges(selected.doc, selected.ranges, pictureOf);
}

/** The same for a given range of the page. */
export function readRange(doc: Document, range: Range): Capture {
  return readRanges(doc, [range]);
}

function readRanges(doc: Document, selected: readonly Range[], pictureOf?: PictureOf): Capture {
  const ranges = selected.map((range) => range.cloneRange());
  for (const range of ranges) takeWholeFormulas(range);
  ranges.sort((a, b) => a.compareBoundaryPoints(a.START_TO_START, b));
  const [range] = ranges;
  if (!range) throw new StudentError('errorSelectionEmpty');
  refuseLong(
    ranges.reduce((sum, each) => sum + roughLength(each), 0),
    LONGEST_PASSAGE,
  );
  const passage = passageOf(ranges, doc, pictureOf);
  const start = inPage(range.startContainer);
  // In an element's own tree nothing but the words can be told by a selector.
  const described =
    start === range.startContainer
      ? describeRange(range, doc.body)
      : ([describeRange(range, range.startContainer.getRootNode())[0]] as const);
  const isQuoted = described[0].exact.trim() !== '';
  if (!isQuoted && !PICTURE_PLACE.test(passage.html)) throw new StudentError('errorSelectionEmpty');
  const headings = headingsAbove(doc, { startContainer: start });
  const selectors = isQuoted ? [...described] : [];
  return { doc, passage, selectors, headings, page: readPlace(doc), range, ranges };
}

function passageOf(ranges: readonly Range[], doc: Document, pictureOf?: PictureOf): Passage {
  const content = contentOf(ranges, doc, pictureOf);
  const text = plainText(content);
  refuseLong(text.length, LONGEST_PASSAGE);
  const html = serialise(content);
  if (text === '' && !PICTURE_PLACE.test(html)) throw new StudentError('errorSelectionEmpty');
  refuseLong(html.length, LONGEST_PASSAGE_HTML);
  return { text, html };
}

/** What the ranges hold, cleaned: in a document without a view, maths converted, nothing but the allow-list. */
export function contentOf(ranges: readonly Range[], doc: Document, pictureOf?: PictureOf): DocumentFragment {
  const inert = doc.implementation.createHTMLDocument('');
  const wrappers: Wrappers = new Map();
  const joined = inert.createDocumentFragment();
  for (const range of ranges) {
    const look = looker(doc.defaultView, range.commonAncestorContainer);
    const content = copyRange(range, inert, look, pictureOf);
    convertMaths(content);
    const part = wrapInContext(content, range, wrappers);
    carryLanguage(part, range);
    if (joined.hasChildNodes() && part.hasChildNodes()) joined.append(inert.createElement('br'));
    joined.append(part);
  }
  const clean = allowOnly(joined, doc);
  trimEdges(clean);
  return clean;
}

/** A selection often reaches a character into the next block, which leaves an empty one behind. */
function trimEdges(parent: DocumentFragment | Element): void {
  for (const side of ['firstChild', 'lastChild'] as const) {
    for (let node = parent[side]; node; node = parent[side]) {
      if (!isBlank(node)) {
        if (isElement(node) && !node.matches('math, pre, tr, img')) trimEdges(node);
        break;
      }
      node.remove();
    }
  }
}

function refuseLong(length: number, limit: number): void {
  if (length > limit) throw new StudentError('errorSelectionTooLong', length, limit);
}

/** Whether text is selected in a form field, which no range reaches. */
function isFieldSelected(doc: Document): boolean {
  const field = doc.activeElement;
  if (field?.localName !== 'input' && field?.localName !== 'textarea') return false;
  const { selectionStart, selectionEnd } = field as HTMLInputElement | HTMLTextAreaElement;
  return selectionStart !== null && selectionStart !== selectionEnd;
}
