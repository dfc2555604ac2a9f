import type { PrintedPage, PrintedText } from './printed.ts';
import type { ShownSide, ShownWords } from './shown.ts';

/** How far letters may move from screen to paper, in CSS pixels. */
const MOVED = 1.5;
/** A run may end in blanks that hang over the edge. */
const BLANKS = 8;

/** Letters alone: blanks are where lines end. Ligatures are the letters that they stand for. */
const lettersOf = (text: string): string => text.normalize('NFKC').replace(/\s+/g, '');

/** Scripts that a machine for tests may have no font for: what has no shape has no letters in a PDF either. */
const isReadable = (text: string): boolean =>
  [...text].every(
    (sign) =>
      /[\p{Script=Latin}\p{Script=Common}\p{Script=Inherited}]/u.test(sign) &&
      !/\p{Emoji_Presentation}/u.test(sign),
  );

/**
 * What is on the screen and not in its place on paper, in words; empty where both are the same.
 * @param moved how far up or down letters may have moved, in CSS pixels; a line further would be 16
 */
export function differences(
  shown: readonly ShownSide[],
  printed: readonly PrintedPage[],
  moved = MOVED,
): string[] {
  if (shown.length !== printed.length) return [`${shown.length} sides shown, ${printed.length} printed`];
  return shown.flatMap((side, index) => {
    const at = `page ${index + 1}: `;
    return [...missing(side, printed[index]!, moved), ...outside(side, printed[index]!)].map(
      (one) => at + one,
    );
  });
}

function missing({ words }: ShownSide, { texts }: PrintedPage, moved: number): string[] {
  const letters = lettersOf(texts.map(({ text }) => text).join(''));
  const found: string[] = [];
  for (const { text, lines } of words.filter((one) => isReadable(one.text))) {
    if (!letters.includes(lettersOf(text))) found.push(`not printed: ${text}`);
    for (const line of lines)
      if (!texts.some((one) => isAt(one, line, moved)))
        found.push(`nothing at ${line.left}, ${line.baseline}: ${text}`);
  }
  return found;
}

const isAt = (one: PrintedText, line: ShownWords['lines'][number], moved: number): boolean =>
  Math.abs(one.baseline - line.baseline) <= moved && one.left < line.right && one.right > line.left;

/** What is printed elsewhere than in a column, the running head aside. */
function outside({ columns }: ShownSide, { texts }: PrintedPage): string[] {
  const top = Math.min(...columns.map((column) => column.top));
  return texts
    .filter(({ baseline }) => baseline > top)
    .filter(
      ({ left, right, baseline }) =>
        !columns.some(
          (column) =>
            left >= column.left - MOVED && right <= column.right + BLANKS && baseline <= column.bottom,
        ),
    )
    .map(({ text, left, baseline }) => `outside of its column: ${text} at ${left}, ${baseline}`);
}
