import type { Line } from './lines.ts';

/** How much larger a gap between lines must be than most gaps, to part paragraphs. */
const WIDE_GAP = 1.3;
/** The same by the size of the letters, where there are too few lines to compare. */
const WIDE_LEADING = 1.9;
/** By how much sizes must differ to part a heading from its text. */
const OTHER_SIZE = 0.12;
/** An indent, by the size of the letters. */
const INDENT = 0.8;
/** How much of the column a line must leave free to count as short. */
const SHORT = 0.2;

const LABEL = /^\s*([•‣◦▪●–—]|\(?([0-9]{1,3}|[a-z]|[ivx]{1,4})[.)])\s/;
const SENTENCE_END = /[.:;!?…][)\]"'”’]?\s*$/;

/** The lines of a passage as paragraphs, told apart by gaps, indents, sizes, labels and short last lines. */
export function paragraphsOf(lines: readonly Line[]): Line[][] {
  const usual = usualGap(lines);
  const columns = columnsOf(lines);
  const paragraphs: Line[][] = [];
  for (const [i, line] of lines.entries()) {
    const before = lines[i - 1];
    if (!before || parts(before, line, usual, columns)) paragraphs.push([line]);
    else paragraphs.at(-1)!.push(line);
  }
  return paragraphs;
}

function parts(before: Line, line: Line, usual: number, columns: Map<Line, Column>): boolean {
  if (Math.abs(line.size - before.size) > OTHER_SIZE * Math.max(line.size, before.size)) return true;
  if (LABEL.test(line.text)) return true;
  const gap = line.baseline - before.baseline;
  const isSentenceEnd = SENTENCE_END.test(before.text);
  // The top of the next column or page: the sentence runs on unless it has ended.
  if (before.page !== line.page || gap <= 0) return isSentenceEnd;
  if (gap > (usual > 0 ? WIDE_GAP * usual : WIDE_LEADING * line.size)) return true;
  if (line.left - before.left > INDENT * line.size) return true;
  const { left, right } = columns.get(before)!;
  const isShort = right - before.right > SHORT * (right - left);
  return isShort && (isSentenceEnd || before.left - left > 2 * before.size);
}

/** The distance that most lines have from the one before; 0 where there are fewer than two distances to judge by. */
function usualGap(lines: readonly Line[]): number {
  const gaps = lines
    .slice(1)
    .map((line, i) => (line.page === lines[i]!.page ? line.baseline - lines[i]!.baseline : 0))
    .filter((gap) => gap > 0)
    .sort((a, b) => a - b);
  return gaps.length < 2 ? 0 : gaps[Math.floor((gaps.length - 1) / 2)]!;
}

interface Column {
  left: number;
  right: number;
}

/** How far the column of each line reaches: as far as any line of its page that lies over or under it. */
function columnsOf(lines: readonly Line[]): Map<Line, Column> {
  const columns = new Map<Line, Column>();
  for (const line of lines) {
    const inColumn = lines.filter(
      (other) => other.page === line.page && other.left < line.right && other.right > line.left,
    );
    columns.set(line, {
      left: Math.min(...inColumn.map(({ left }) => left)),
      right: Math.max(...inColumn.map(({ right }) => right)),
    });
  }
  return columns;
}
