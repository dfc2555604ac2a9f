import { allowOnly } from '#lib/capture/allow-only.ts';
import { FRAME_HTML } from '#lib/capture/pdf/frame.ts';
import { headingsAbovePiece } from '#lib/capture/pdf/headings.ts';
import { passageOf } from '#lib/capture/pdf/passage.ts';
import { type Piece, boxOf } from '#lib/capture/pdf/piece.ts';
import { type PdfPlace, type Rect, fragmentOf } from '#lib/capture/pdf/place.ts';
import {
  type Selected,
  type TextLayerOf,
  piecesIn,
  placeOfSelected,
  quoteOf,
  rawText,
  selectedIn,
} from '#lib/capture/pdf/selected.ts';
import { piecesUnder } from '#lib/capture/pdf/text-under.ts';
import { FRAGMENT_OF, type FragmentSelector } from '#lib/model/selector.ts';
import { StudentError } from '#lib/model/student-error.ts';
import type { Subject } from '../slip/subject.ts';
import { pictureOfFrame } from './draw-page.ts';
import type { OpenPdf } from './open-pdf.ts';
import { textOfPage } from './page-text.ts';

/** Rectangles marked on pages, by page. */
export type Marks = ReadonlyMap<number, readonly Rect[]>;

/** What the slip beside a PDF is about. */
export interface PdfSubject extends Omit<Subject, 'place'> {
  /** As it will be kept, to be shown. */
  preview: DocumentFragment;
  /** Where it stands on the pages. */
  marks: Marks;
}

const fragmentSelector = (place: PdfPlace): FragmentSelector => ({
  type: 'FragmentSelector',
  conformsTo: FRAGMENT_OF.pdf,
  value: fragmentOf(place),
});

/**
 * The selected passage.
 *
 * @param layers the text of every page that the range touches
 * @throws StudentError `errorSelectionEmpty`, `errorSelectionTooLong`
 */
export function selectionSubject(
  { source }: OpenPdf,
  layers: readonly TextLayerOf[],
  range: Range | null,
): PdfSubject {
  const selected = range ? selectedIn(range, layers) : [];
  const place = placeOfSelected(selected);
  const touched = new Set(selected.map(({ piece }) => piece.page));
  const pages = layers.filter(({ page }) => touched.has(page)).toSorted((a, b) => a.page - b.page);
  const pieces = pages.flatMap((layer) => layer.pieces);
  const quote = quoteOf(selected, pieces);
  if (!place || !quote) throw new StudentError('errorSelectionEmpty');
  const passage = passageOf(piecesIn(selected), rawText(pieces), document);
  const first = selected.find(({ piece, from, to }) => piece.text.slice(from, to).trim() !== '')!.piece;
  return {
    passage,
    headings: headingsAbovePiece(pages[0]!.pieces, first),
    selectors: [quote, fragmentSelector(place)],
    pictures: [],
    page: source,
    preview: allowOnly(passage.html, document),
    marks: marksOf(selected),
  };
}

function marksOf(selected: readonly Selected[]): Marks {
  const written = selected.filter(({ piece, from, to }) => piece.text.slice(from, to).trim() !== '');
  return new Map(
    [...Map.groupBy(written, ({ piece }) => piece.page)].map(([page, parts]) => [
      page,
      parts.map(({ piece, from, to }) => boxOf(piece, from, to)),
    ]),
  );
}

const LONGEST_ALT = 2000;

/** A framed part of a page as a picture, with the text under it as its text. */
export async function frameSubject(
  { doc, source }: OpenPdf,
  number: number,
  rect: Rect,
): Promise<PdfSubject> {
  const page = await doc.getPage(number);
  const pieces = await textOfPage(page).then(
    (text) => text.pieces,
    (): Piece[] => [],
  );
  const under = piecesUnder(rect, pieces);
  const { text } = passageOf(under, rawText(pieces), document);
  const picture = await pictureOfFrame(page, rect, text.slice(0, LONGEST_ALT));
  const isWritten = (piece: Piece) => piece.text.trim() !== '';
  const first =
    under.find(isWritten) ?? pieces.find((piece) => isWritten(piece) && boxOf(piece).top >= rect.top);
  return {
    passage: { text, html: FRAME_HTML },
    headings: first ? headingsAbovePiece(pieces, first) : [],
    selectors: [fragmentSelector({ page: number, rect })],
    pictures: [picture],
    page: source,
    preview: previewOf(picture.dataUrl, picture.alt),
    marks: new Map([[number, [rect]]]),
  };
}

function previewOf(dataUrl: string, alt: string): DocumentFragment {
  const image = new Image();
  image.src = dataUrl;
  image.alt = alt;
  const preview = document.createDocumentFragment();
  preview.append(image);
  return preview;
}
