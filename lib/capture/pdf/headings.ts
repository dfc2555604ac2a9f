import { LONGEST_HEADING, LONGEST_TITLE, cut, oneLine } from '../limits.ts';
import { plainLetters } from './letters.ts';
import { type Line, commonSize, linesOf } from './lines.ts';
import { paragraphsOf } from './paragraphs.ts';
import type { Piece } from './piece.ts';

/** How much larger than most letters a heading's are. */
const LARGER = 1.12;
const MOST = 3;
const LONGEST_BIG_LINE = 200;

const textOf = (lines: readonly Line[]): string =>
  oneLine(plainLetters(lines.map(({ text }) => text).join(' ')));

/** The headings above a piece on its page, nearest first: lines that are set larger than most. */
export function headingsAbovePiece(pieces: readonly Piece[], first: Piece): string[] {
  const usual = commonSize(pieces);
  const above = paragraphsOf(linesOf(pieces.slice(0, pieces.indexOf(first))));
  return above
    .filter((lines) => lines[0]!.size > LARGER * usual)
    .map((lines) => cut(textOf(lines), LONGEST_HEADING))
    .filter((text) => /\p{L}{2}/u.test(text))
    .toReversed()
    .slice(0, MOST);
}

/** Titles that programs leave behind: names of files, of nothing, and of themselves. */
const NO_TITLE =
  /^(untitled|document\d*|title|microsoft word\b.*|.*\.(docx?|pdf|tex|dvi|odt|indd|qxd|pptx?))$/i;

/** What a PDF is called: its own title where that is one, else the largest line of its first page, else its file name. */
export function titleOfPdf(claimed: string, firstPage: readonly Piece[], fileName: string): string {
  const title = oneLine(claimed);
  if (title.length > 2 && !NO_TITLE.test(title)) return cut(title, LONGEST_TITLE);
  return bigLine(firstPage) || cut(oneLine(fileName.replace(/\.pdf$/i, '')), LONGEST_TITLE);
}

/** The first of the largest lines, with those that go on in the same size; '' where no size stands out. */
function bigLine(pieces: readonly Piece[]): string {
  const usual = commonSize(pieces);
  const paragraphs = paragraphsOf(linesOf(pieces)).filter((lines) => /\p{L}{2}/u.test(textOf(lines)));
  const largest = Math.max(0, ...paragraphs.map((lines) => lines[0]!.size));
  const big = largest > LARGER * usual ? paragraphs.find((lines) => lines[0]!.size === largest) : undefined;
  return big ? cut(textOf(big), LONGEST_BIG_LINE) : '';
}
