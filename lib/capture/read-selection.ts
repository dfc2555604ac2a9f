import type { Passage } from '#lib/model/clip.ts';
import type { Selector } from '#lib/model/selector.ts';
import { StudentError } from '#lib/model/student-error.ts';
import { type Wrappers, carryLanguage, wrapInContext } from './context.ts';
import { copyRange } from './copy-range.ts';
import { isBlank, isElement } from './dom.ts';
import { takeWholeFormulas } from './maths/formula.ts';
import { headingsAbove } from './headings.ts';
import { LONGEST_PASSAGE, LONGEST_PASSAGE_HTML } from './limits.ts';
import { convertMaths } from './maths/convert-maths.ts';
import { type Page, readPage } from './page.ts';
import { plainText } from './plain-text.ts';
import { roughLength } from './rough-length.ts';
import { allowOnly, serialise } from './allow-only.ts';
import { describeRange } from './find/describe-range.ts';
import { looker } from './visibility.ts';

export interface Capture {
  passage: Passage;
  /** Quote and position of `range` in the text of the page's body. */
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
 * @throws StudentError `errorSelectionEmpty`; `errorSelectionInField` when only the text of a form field is selected;
 *   `errorSelectionTooLong` with length and limit in characters; `errorPageAddress`
 */
export function readSelection(doc: Document): Capture {
  const selection = doc.getSelection();
  const ranges: Range[] = [];
  for (let index = 0; index < (selection?.rangeCount ?? 0); index++) {
    const range = selection!.getRangeAt(index);
    if (!range.collapsed) ranges.push(range);
  }
  if (ranges.length === 0 && isFieldSelected(doc)) throw new StudentError('errorSelectionInField');
  return readRanges(doc, ranges);
}

/** The same for a given range of the page. */
export function readRange(doc: Document, range: Range): Capture {
  return readRanges(doc, [range]);
}

function readRanges(doc: Document, selected: readonly Range[]): Capture {
  const ranges = selected.map((range) => range.cloneRange());
  for (const range of ranges) takeWholeFormulas(range);
  ranges.sort((a, b) => a.compareBoundaryPoints(a.START_TO_START, b));
  const [range] = ranges;
  if (!range) throw new StudentError('errorSelectionEmpty');
  refuseLong(
    ranges.reduce((sum, each) => sum + roughLength(each), 0),
    LONGEST_PASSAGE,
  );
  const passage = passageOf(ranges, doc);
  const selectors = describeRange(range, doc.body);
  if (selectors[0].exact.trim() === '') throw new StudentError('errorSelectionEmpty');
  return { passage, selectors, headings: headingsAbove(doc, range), page: readPage(doc), range, ranges };
}

function passageOf(ranges: readonly Range[], doc: Document): Passage {
  const content = contentOf(ranges, doc);
  const text = plainText(content);
  if (text === '') throw new StudentError('errorSelectionEmpty');
  refuseLong(text.length, LONGEST_PASSAGE);
  const html = serialise(content);
  refuseLong(html.length, LONGEST_PASSAGE_HTML);
  return { text, html };
}

/** What the ranges hold, cleaned: in a document without a view, maths converted, nothing but the allow-list. */
export function contentOf(ranges: readonly Range[], doc: Document): DocumentFragment {
  const inert = doc.implementation.createHTMLDocument('');
  const wrappers: Wrappers = new Map();
  const joined = inert.createDocumentFragment();
  for (const range of ranges) {
    const content = copyRange(range, inert, looker(doc.defaultView, range.commonAncestorContainer));
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
        if (isElement(node) && !node.matches('math, pre, tr')) trimEdges(node);
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
