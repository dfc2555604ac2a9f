import type { Rect } from './place.ts';

/** A run of text on a page as the PDF sets it, as far as it is read here: pdf.js's TextItem. */
export interface PdfItem {
  str: string;
  /** Where its baseline begins, in the page's own space. */
  transform: number[];
  width: number;
  hasEOL: boolean;
}

/** A run of text on a page as it is seen, in points from the page's top left corner. */
export interface Piece {
  page: number;
  text: string;
  left: number;
  /** The line that letters stand on. */
  baseline: number;
  width: number;
  /** The size of its letters. */
  size: number;
  endsLine: boolean;
}

/** pdf.js's TextMarkedContent stands among the items and is no text. */
const isText = (item: object): item is PdfItem => 'str' in item;

/**
 * The runs of text of a page.
 *
 * @param view how the page's own space becomes the page as it is seen, at one pixel a point
 */
export function piecesOf(items: readonly object[], page: number, view: readonly number[]): Piece[] {
  return items.filter(isText).map((item) => {
    const at = times(view, item.transform);
    return {
      page,
      text: item.str,
      left: at[4]!,
      baseline: at[5]!,
      width: item.width,
      size: Math.hypot(at[2]!, at[3]!),
      endsLine: item.hasEOL,
    };
  });
}

/** One transform after another, each as [a b c d e f]. */
function times(m: readonly number[], n: readonly number[]): number[] {
  const [a, b, c, d, e, f] = m as [number, number, number, number, number, number];
  const [g, h, i, j, k, l] = n as [number, number, number, number, number, number];
  return [a * g + c * h, b * g + d * h, a * i + c * j, b * i + d * j, a * k + c * l + e, b * k + d * l + f];
}

/** How far letters reach above and below their baseline, by their size. */
const ABOVE = 0.8;
const BELOW = 0.22;

/** Where the piece, or the part of it between two letters, stands on its page. */
export function boxOf(piece: Piece, from = 0, to = piece.text.length): Rect {
  const each = piece.text.length > 0 ? piece.width / piece.text.length : 0;
  return {
    left: piece.left + from * each,
    top: piece.baseline - ABOVE * piece.size,
    width: (to - from) * each,
    height: (ABOVE + BELOW) * piece.size,
  };
}

/** The part of the piece between two letters. Its end of line goes with its last letter. */
export function cutPiece(piece: Piece, from: number, to: number): Piece {
  const { left, width } = boxOf(piece, from, to);
  const text = piece.text.slice(from, to);
  return { ...piece, text, left, width, endsLine: piece.endsLine && to === piece.text.length };
}
