import { follows } from './follows.ts';
import type { ReadLine } from './read-line.ts';

/** A row of the text: a line, with the lines that it runs on over. */
export interface JoinedLine extends ReadLine {
  /** Whether it runs over several lines. */
  joined: boolean;
}

export interface JoinedLines {
  rows: JoinedLine[];
  /** Numbers of the lines that say nothing of their own. */
  leftOut: number[];
}

/** A line counts as full from this part of the longest line, if the text is wrapped at all. */
const FULL = 0.75;
const NARROWEST_WRAP = 50;
/** Where a row has grown to this many characters, nothing more is added: it is cut later anyway. */
const LONGEST_ROW = 4000;
/** How far a line without a mark is set in when it belongs under the line above. */
const UNDER = 4;

const RUNS_ON =
  /(?:[,(/&–—]|\w-|\b(?:and|or|of|the|a|an|to|in|on|with|for|by|from|as|that|which|their|its|between|into|using))$/i;
const LEAD_IN =
  /^(?:.{0,80}\bbe able to|learning (?:outcomes?|objectives?)|objectives|outcomes|contents?|table of contents)\s*[:.…]*$/i;
const PAGE_NUMBER = /^(?:page\s+)?\d{1,4}(?:\s+of\s+\d{1,4})?$/i;

/** Joins lines that are wrapped, and leaves out those that say nothing of their own. */
export function joinLines(lines: readonly ReadLine[]): JoinedLines {
  const rows: JoinedLine[] = [];
  const leftOut: number[] = [];
  const layout = layoutOf(lines);
  const ahead = markedAhead(lines);
  lines.forEach((line, i) => {
    const last = rows.at(-1);
    const place = { last, previous: lines[i - 1], next: ahead[i], after: lines[i + 1], layout };
    if (isEmptyOfSense(line, lines[i + 1])) leftOut.push(line.line);
    else if (last && line.mark.kind === 'none' && isWrapped(line, place))
      runOn(last, line, lines[i - 1] ?? line);
    else rows.push({ ...line, indent: indentOf(line, place, rows), joined: false });
  });
  return { rows: rows.filter((row) => row.text !== '' || !leftOut.push(row.line)), leftOut };
}

interface Layout {
  /** Lines from this width on are full; Infinity where the text is not wrapped. */
  fullFrom: number;
  /** Whether a small first letter tells that a line goes on. */
  smallTells: boolean;
}

interface Place {
  /** The row being read. */
  last: JoinedLine | undefined;
  /** The line above. */
  previous: ReadLine | undefined;
  /** The line below, and the first line below that has a mark. */
  after: ReadLine | undefined;
  next: ReadLine | undefined;
  layout: Layout;
}

function layoutOf(lines: readonly ReadLine[]): Layout {
  const widest = lines.reduce((most, line) => Math.max(most, line.width), 0);
  const marked = lines.filter((line) => line.mark.kind !== 'none');
  const small = marked.filter((line) => startsSmall(line.text)).length;
  return {
    fullFrom: widest >= NARROWEST_WRAP ? FULL * widest : Infinity,
    smallTells: marked.length > 0 && small <= 0.3 * marked.length,
  };
}

/** For each line, the first line below it that has a mark. */
function markedAhead(lines: readonly ReadLine[]): (ReadLine | undefined)[] {
  let next: ReadLine | undefined;
  return lines
    .map((_, i, all) => {
      const found = next;
      const line = all[all.length - 1 - i];
      if (line && line.mark.kind !== 'none') next = line;
      return found;
    })
    .reverse();
}

/** "Candidates should be able to:" and page numbers. */
function isEmptyOfSense(line: ReadLine, after: ReadLine | undefined): boolean {
  if (line.mark.kind === 'none' && LEAD_IN.test(line.text)) return true;
  const ends = after === undefined || after.afterBlank;
  return PAGE_NUMBER.test(line.unmarked) && ends && line.indent + line.unmarked.length === line.width;
}

function isWrapped(line: ReadLine, { last, previous, after, next, layout }: Place): boolean {
  if (!last || !previous || line.afterBlank || last.mark.kind === 'heading') return false;
  if (last.text === '') return true;
  const isFull = previous.width >= layout.fullFrom;
  if (last.mark.kind === 'none') return isFull && line.indent === previous.indent && startsSmall(line.text);
  if (RUNS_ON.test(previous.text) || (layout.smallTells && startsSmall(line.text))) return true;
  return runsOnByLayout(line, last, next, isFull) && (isFull || !isOneOfSeveral(line, previous, after));
}

/** A full line may go on further in; any line may where the next mark goes on from the row's. */
function runsOnByLayout(
  line: ReadLine,
  last: ReadLine,
  next: ReadLine | undefined,
  isFull: boolean,
): boolean {
  if (line.indent > last.indent) return isFull;
  return next ? follows(last, next) : isFull;
}

/** Whether a line without a mark has another beside it: two in a row are a list rather than a wrapped line. */
function isOneOfSeveral(line: ReadLine, previous: ReadLine, after: ReadLine | undefined): boolean {
  const isAlike = (other: ReadLine): boolean => other.mark.kind === 'none' && other.indent === line.indent;
  return isAlike(previous) || (after !== undefined && !after.afterBlank && isAlike(after));
}

function runOn(row: JoinedLine, line: ReadLine, previous: ReadLine): void {
  if (row.text === '') row.text = line.text;
  else if (row.text.length <= LONGEST_ROW) {
    const isBroken = /[a-z]-$/.test(previous.text) && startsSmall(line.text);
    row.text = isBroken ? row.text.slice(0, -1) + line.text : `${row.text} ${line.text}`;
    row.joined = true;
  }
}

/** A line without a mark between a number and the one that follows it belongs under the first, however far in it is. */
function indentOf(line: ReadLine, { next }: Place, rows: readonly JoinedLine[]): number {
  if (line.mark.kind !== 'none' || !next) return line.indent;
  const marked = rows.findLast((row) => row.mark.kind !== 'none');
  if (!marked || marked.mark.kind !== 'label' || line.indent > marked.indent) return line.indent;
  return follows(marked, next) ? marked.indent + UNDER : line.indent;
}

const startsSmall = (text: string): boolean => /^\p{Ll}/u.test(text);
