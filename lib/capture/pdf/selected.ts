import type { TextQuoteSelector } from '#lib/model/selector.ts';
import { type PdfPlace, around } from './place.ts';
import { type Piece, boxOf, cutPiece } from './piece.ts';

/** The text of a page with the element that shows each of its pieces, in the same order. */
export interface TextLayerOf {
  page: number;
  pieces: readonly Piece[];
  elements: readonly HTMLElement[];
}

/** A piece, or a part of one, that is selected: the letters from `from` to `to`. */
export interface Selected {
  piece: Piece;
  from: number;
  to: number;
}

/** What of the pages' text lies in a range, in the order of pages and pieces. */
export function selectedIn(range: Range, layers: readonly TextLayerOf[]): Selected[] {
  const selected: Selected[] = [];
  for (const { pieces, elements } of layers.toSorted((a, b) => a.page - b.page)) {
    let goesOn = false;
    for (const [i, piece] of pieces.entries()) {
      const element = elements[i];
      // A piece without letters stands nowhere, but ends the line of the one before.
      if (piece.text === '') {
        if (goesOn) selected.push({ piece, from: 0, to: 0 });
        continue;
      }
      goesOn = false;
      if (!element?.isConnected || !range.intersectsNode(element)) continue;
      const from = offsetIn(element, range.startContainer, range.startOffset, 0);
      const to = offsetIn(element, range.endContainer, range.endOffset, piece.text.length);
      if (to <= from) continue;
      selected.push({ piece, from, to });
      goesOn = to === piece.text.length;
    }
  }
  return selected;
}

/** How many letters of the element come before a boundary; `outside` where the boundary lies elsewhere. */
function offsetIn(element: HTMLElement, container: Node, offset: number, outside: number): number {
  if (!element.contains(container)) return outside;
  // In the element itself the boundary counts children: before or after its one text.
  return container === element ? (offset === 0 ? 0 : element.textContent.length) : offset;
}

/** The selected pieces as such. */
export const piecesIn = (selected: readonly Selected[]): Piece[] =>
  selected.map(({ piece, from, to }) => cutPiece(piece, from, to));

/** Where the selection begins: its first page and the rectangle around what is selected there. */
export function placeOfSelected(selected: readonly Selected[]): PdfPlace | null {
  const written = selected.filter(({ piece, from, to }) => piece.text.slice(from, to).trim() !== '');
  const page = written[0]?.piece.page;
  if (page === undefined) return null;
  const onPage = written.filter(({ piece }) => piece.page === page);
  return { page, rect: around(onPage.map(({ piece, from, to }) => boxOf(piece, from, to))) };
}

/** How many code points of context a quote has on either side. */
const CONTEXT = 32;

/** The text of a page as the PDF gives it: its pieces, with a line end after each line. */
export const rawText = (pieces: readonly Piece[]): string =>
  pieces.map(({ text, endsLine }) => (endsLine ? `${text}\n` : text)).join('');

/**
 * Describes a selection by its words, after the W3C Web Annotation Data Model (4.2.4 Text Quote Selector), in the raw
 * text of its pages; null when nothing but spaces is selected.
 *
 * @param pages all pieces of the pages that the selection touches, in their order
 */
export function quoteOf(selected: readonly Selected[], pages: readonly Piece[]): TextQuoteSelector | null {
  const [first, last] = [selected[0], selected.at(-1)];
  if (!first || !last) return null;
  const startOf = (wanted: Piece) => rawText(pages.slice(0, pages.indexOf(wanted))).length;
  const text = rawText(pages);
  const from = startOf(first.piece) + first.from;
  const to = startOf(last.piece) + last.to;
  const exact = text.slice(from, to);
  if (exact.trim() === '') return null;
  const points = (part: string) => [...part];
  return {
    type: 'TextQuoteSelector',
    exact,
    prefix: points(text.slice(Math.max(0, from - 2 * CONTEXT), from))
      .slice(-CONTEXT)
      .join(''),
    suffix: points(text.slice(to, to + 2 * CONTEXT))
      .slice(0, CONTEXT)
      .join(''),
  };
}
