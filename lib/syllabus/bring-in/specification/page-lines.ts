import { plainLetters } from '#lib/capture/pdf/letters.ts';
import { type Line, linesOf } from '#lib/capture/pdf/lines.ts';
import { type Piece, boxOf } from '#lib/capture/pdf/piece.ts';
import { readLabel } from '../../outline/label.ts';

/** The text of one page of a PDF. */
export interface PageOfText {
  /** From 1. */
  page: number;
  /** In points, as the page is seen. */
  height: number;
  pieces: readonly Piece[];
}

/** A line of a specification. Lengths in points, from the top left corner of its page. */
export interface SpecLine {
  /** Its place among all lines, from 1. */
  line: number;
  page: number;
  text: string;
  left: number;
  right: number;
  /** Where its text begins behind a number or bullet; its left edge where it has none. */
  textLeft: number;
  baseline: number;
  size: number;
  /** How far down its page it stands, 0 to 1. */
  down: number;
  /** Whether its end stands apart, as the page numbers of a table of contents do. */
  endsApart: boolean;
}

/** Pieces on the same line stand at most this far apart in height, by the size of their letters. */
const SAME_LINE = 0.35;
/** From this gap on, by the size of the letters, the end of a line stands apart. */
const APART = 3;

/** The lines of all pages, in the order of the PDF. A number or bullet set apart joins the text beside it. */
export function linesOfPages(pages: readonly PageOfText[]): SpecLine[] {
  let count = 0;
  return pages.flatMap(({ pieces, height }) =>
    beside(linesOf(pieces.filter(isSeen))).map((line) => ({ ...specLine(line, height), line: ++count })),
  );
}

/** Letters without a size are not seen. */
const isSeen = ({ size }: Piece): boolean => size > 0;

const wordsOf = (line: Line): string => plainLetters(line.text).trim();

/** Joins lines that are nothing but a number or bullet with the next line where that stands beside it. */
function beside(lines: readonly Line[]): Line[] {
  const joined: Line[] = [];
  for (const line of lines) {
    const last = joined.at(-1);
    const isBeside =
      last &&
      Math.abs(line.baseline - last.baseline) < SAME_LINE * Math.max(line.size, last.size) &&
      line.left >= last.right &&
      isMarkAlone(wordsOf(last));
    if (isBeside) joined.splice(-1, 1, together(last, line));
    else joined.push(line);
  }
  return joined;
}

const together = (mark: Line, text: Line): Line => ({
  ...text,
  pieces: [...mark.pieces, ...text.pieces],
  text: `${mark.text.trimEnd()} ${text.text}`,
  left: mark.left,
});

function isMarkAlone(text: string): boolean {
  if (/^[•◦▪■●○‣–—·-]$/.test(text)) return true;
  const labelled = readLabel(`${text} X`);
  return labelled !== null && labelled.rest === 'X' && labelled.label.word === null;
}

function specLine(line: Line, height: number): Omit<SpecLine, 'line'> {
  const written = line.pieces.filter(({ text }) => text.trim() !== '');
  const text = wordsOf(line);
  const [last, before] = [written.at(-1), written.at(-2)];
  const gap = last && before ? last.left - (before.left + before.width) : 0;
  return {
    page: line.page,
    text,
    left: line.left,
    right: line.right,
    textLeft: textLeftOf(written, text, line.left),
    baseline: line.baseline,
    size: line.size,
    down: height > 0 ? line.baseline / height : 0.5,
    endsApart: gap > APART * line.size,
  };
}

/** Where the text stands behind a mark: at the piece that it starts in, or as far in as the mark is long. */
function textLeftOf(pieces: readonly Piece[], text: string, left: number): number {
  const bullet = /^[•◦▪■●○‣–—·-]\s+/.exec(text)?.[0];
  const labelled = bullet ? null : readLabel(text);
  const mark = bullet ?? (labelled?.label.sure ? text.slice(0, text.length - labelled.rest.length) : '');
  let skip = mark.replace(/\s/g, '').length;
  if (skip === 0) return left;
  for (const piece of pieces) {
    const letters = piece.text.replace(/\s/g, '').length;
    if (skip === 0) return piece.left;
    if (letters > skip) return boxOf(piece, Math.min(piece.text.length, mark.length)).left;
    skip -= letters;
  }
  return left;
}
