// @vitest-environment jsdom
import { beforeEach, expect, test } from 'vitest';
import { type Piece, boxOf, piecesOf } from '#lib/capture/pdf/piece.ts';
import { headingsAbovePiece, titleOfPdf } from '#lib/capture/pdf/headings.ts';
import {
  type TextLayerOf,
  piecesIn,
  placeOfSelected,
  quoteOf,
  selectedIn,
} from '#lib/capture/pdf/selected.ts';
import { piecesUnder } from '#lib/capture/pdf/text-under.ts';
import { aPiece, lines } from './page-of-text.ts';

beforeEach(() => document.body.replaceChildren());

/** A text layer as pdf.js lays it: a span for each piece that has letters. */
function layer(page: number, pieces: readonly Piece[]): TextLayerOf {
  const elements = pieces.map(({ text }) => {
    const span = document.createElement('span');
    span.textContent = text;
    if (text !== '') document.body.append(span);
    return span;
  });
  return { page, pieces, elements };
}

function rangeOver(from: Node, start: number, to: Node, end: number): Range {
  const range = document.createRange();
  range.setStart(from, start);
  range.setEnd(to, end);
  return range;
}

const PIECES = [aPiece('Long waves', { endsLine: false }), aPiece('', {}), aPiece('outrun short ones.')];

test('a selection takes the letters between its ends, and the line end between its pieces', () => {
  const one = layer(1, PIECES);
  const range = rangeOver(one.elements[0]!.firstChild!, 5, one.elements[2]!.firstChild!, 6);
  const selected = selectedIn(range, [one]);
  expect(piecesIn(selected).map(({ text, endsLine }) => [text, endsLine])).toEqual([
    ['waves', false],
    ['', true],
    ['outrun', false],
  ]);
  expect(quoteOf(selected, PIECES)).toEqual({
    type: 'TextQuoteSelector',
    exact: 'waves\noutrun',
    prefix: 'Long ',
    suffix: ' short ones.\n',
  });
});

test('a boundary in the element itself counts its children', () => {
  const one = layer(1, PIECES);
  const selected = selectedIn(rangeOver(one.elements[0]!, 0, one.elements[2]!, 1), [one]);
  expect(piecesIn(selected).map(({ text }) => text)).toEqual(['Long waves', '', 'outrun short ones.']);
});

test('over two pages: the order is that of the pages, the place that of the first', () => {
  const one = layer(1, lines(['first page']));
  const two = layer(2, lines(['second page'], { page: 2 }));
  const range = rangeOver(one.elements[0]!.firstChild!, 6, two.elements[0]!.firstChild!, 6);
  const selected = selectedIn(range, [two, one]);
  expect(piecesIn(selected).map(({ text, page }) => [page, text])).toEqual([
    [1, 'page'],
    [2, 'second'],
  ]);
  // Letters are 5 points wide: the sixth begins at 50 + 6 × 5.
  expect(placeOfSelected(selected)).toEqual({
    page: 1,
    rect: { left: 80, top: 92, width: 20, height: expect.closeTo(10.2) as number },
  });
  expect(quoteOf(selected, [...one.pieces, ...two.pieces])?.exact).toBe('page\nsecond');
});

test('nothing of the pages, or nothing but spaces, is no place and no quote', () => {
  const one = layer(1, [aPiece('   ')]);
  const selected = selectedIn(rangeOver(one.elements[0]!.firstChild!, 0, one.elements[0]!.firstChild!, 2), [
    one,
  ]);
  expect([placeOfSelected(selected), quoteOf(selected, one.pieces)]).toEqual([null, null]);
  expect([placeOfSelected([]), quoteOf([], [])]).toEqual([null, null]);
});

test('context is counted in code points, so that no letter is cut in half', () => {
  const pieces = [aPiece('𝜔'.repeat(40), { endsLine: false }), aPiece('x', { endsLine: false })];
  const one = layer(1, pieces);
  const letter = one.elements[1]!.firstChild!;
  expect(quoteOf(selectedIn(rangeOver(letter, 0, letter, 1), [one]), pieces)?.prefix).toBe('𝜔'.repeat(32));
});

test('a page turned by a quarter has its text where it is seen', () => {
  // pdf.js's view of an A4 page that is turned clockwise: what was up is on the right.
  const view = [0, 1, 1, 0, 0, 0];
  const item = { str: 'up', transform: [12, 0, 0, 12, 30, 40], width: 12, hasEOL: true };
  expect(piecesOf([{ type: 'beginMarkedContent' }, item], 4, view)).toEqual([
    { page: 4, text: 'up', left: 40, baseline: 30, width: 12, size: 12, endsLine: true },
  ]);
});

test('a frame takes the words under it, also where it cuts a line', () => {
  const [line] = lines(['one two three']);
  const under = piecesUnder({ left: 68, top: 90, width: 22, height: 14 }, [
    line!,
    aPiece('far', { baseline: 300 }),
  ]);
  expect(under.map(({ text }) => text)).toEqual(['two ']);
  expect(boxOf(under[0]!).left).toBe(70);
});

test('headings above a passage are the lines that are set larger, nearest first', () => {
  const pieces = [
    ...lines(['Waves'], { size: 20, baseline: 60 }),
    ...lines(['Dispersion of long', 'and short waves'], { size: 14, baseline: 90 }),
    ...lines(['Body text that is the most of the page.', 'Here is what was selected.'], { baseline: 120 }),
    ...lines(['Later'], { size: 14, baseline: 160 }),
  ];
  expect(headingsAbovePiece(pieces, pieces[4]!)).toEqual(['Dispersion of long and short waves', 'Waves']);
});

test.each([
  ['Waves on water', 'Waves on water'],
  ['Microsoft Word - waves.docx', 'Tides in two columns'],
  ['untitled', 'Tides in two columns'],
  ['notes.tex', 'Tides in two columns'],
  ['', 'Tides in two columns'],
])('a PDF that calls itself “%s” has a title', (claimed, title) => {
  const first = [
    ...lines(['Tides in two columns'], { size: 18, baseline: 60 }),
    ...lines(['Body text of the page, which is longer.'], { baseline: 90 }),
  ];
  expect(titleOfPdf(claimed, first, 'tides.pdf')).toBe(title);
});

test('a PDF with neither title nor a larger line goes by its file name', () => {
  expect(titleOfPdf('', lines(['All of one size']), 'Problem sheet 3.pdf')).toBe('Problem sheet 3');
  expect(titleOfPdf('', [], 'scan.PDF')).toBe('scan');
});
