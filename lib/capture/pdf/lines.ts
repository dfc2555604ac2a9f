import type { Piece } from './piece.ts';

/** A line of text as it stands on the page. */
export interface Line {
  page: number;
  pieces: Piece[];
  text: string;
  left: number;
  right: number;
  baseline: number;
  /** The size of most of its letters. */
  size: number;
}

/** The lines that pieces make up, in the order in which the PDF gives them: one column after the other. */
export function linesOf(pieces: readonly Piece[]): Line[] {
  const lines: Line[] = [];
  let open: Piece[] = [];
  const close = () => {
    if (open.some(({ text }) => text.trim() !== '')) lines.push(lineOf(open));
    open = [];
  };
  for (const piece of pieces) {
    if (open.length > 0 && open[0]!.page !== piece.page) close();
    open.push(piece);
    if (piece.endsLine) close();
  }
  close();
  return lines;
}

function lineOf(pieces: Piece[]): Line {
  const written = pieces.filter(({ text }) => text.trim() !== '');
  const size = commonSize(written);
  // Where most letters stand: raised and lowered ones are smaller.
  const base = longest(written.filter((piece) => piece.size === size));
  return {
    page: base.page,
    pieces,
    text: pieces.map(({ text }) => text).join(''),
    left: Math.min(...written.map(({ left }) => left)),
    right: Math.max(...written.map(({ left, width }) => left + width)),
    baseline: base.baseline,
    size,
  };
}

/** The size that most letters have. */
export function commonSize(pieces: readonly { text: string; size: number }[]): number {
  const letters = new Map<number, number>();
  for (const { text, size } of pieces)
    letters.set(size, (letters.get(size) ?? 0) + text.replace(/\s/g, '').length);
  let common = 0;
  let most = -1;
  for (const [size, count] of letters) if (count > most) [common, most] = [size, count];
  return common;
}

const longest = (pieces: readonly Piece[]): Piece =>
  pieces.reduce((best, piece) => (piece.text.length > best.text.length ? piece : best));
