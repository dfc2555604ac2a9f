import { cutText } from './outline/cut-text.ts';
import { DEEPEST, LONGEST } from './outline-row.ts';
import type { OutlineDraftRow } from './outline-row.ts';
import { endOfSubtree, normaliseRows } from './normalise-rows.ts';

// Every edit returns new rows, put right by normaliseRows; what is not touched stays the same objects. A place where
// there is no row, or an edit that has nowhere to go, leaves the rows as they are.

type Rows = readonly OutlineDraftRow[];

/** One level further in, under the row above it; all that stands under the row goes with it. */
export function indentRow(rows: Rows, at: number): OutlineDraftRow[] {
  const row = rows[at];
  const above = rows[at - 1];
  if (!row || !above || row.depth > above.depth || deepestUnder(rows, at) >= DEEPEST) return [...rows];
  return shiftSubtree(rows, at, 1);
}

/** One level further out; all that stands under the row goes with it. */
export function outdentRow(rows: Rows, at: number): OutlineDraftRow[] {
  return rows[at]?.depth ? shiftSubtree(rows, at, -1) : [...rows];
}

/** Takes a row out; what stood under it moves up to where it stood. */
export function removeRow(rows: Rows, at: number): OutlineDraftRow[] {
  if (!rows[at]) return [...rows];
  return normaliseRows(shiftRows(rows, at + 1, endOfSubtree(rows, at), -1).toSpliced(at, 1));
}

/** Takes a row out with all that stands under it. */
export function removeBranch(rows: Rows, at: number): OutlineDraftRow[] {
  return rows[at] ? normaliseRows(rows.toSpliced(at, endOfSubtree(rows, at) - at)) : [...rows];
}

/** Changes what a row says, its code, its share, its tier or its kind, or switches it off or on. */
export function changeRow(
  rows: Rows,
  at: number,
  change: Partial<Pick<OutlineDraftRow, 'code' | 'text' | 'share' | 'unit' | 'group' | 'off' | 'kind'>>,
): OutlineDraftRow[] {
  return normaliseRows(rows.map((row, i) => (i === at ? { ...row, ...change } : row)));
}

/** Puts an empty row right behind a row: as its first child where it has children, beside it where it has none. */
export function insertRowAfter(rows: Rows, at: number): OutlineDraftRow[] {
  const row = rows[at];
  if (!row) return [...rows];
  const next = rows[at + 1];
  const model = next && next.depth > row.depth ? next : row;
  const empty: OutlineDraftRow = { kind: model.kind, depth: model.depth, code: '', text: '', share: null };
  return normaliseRows(rows.toSpliced(at + 1, 0, empty));
}

/** Takes a line in that was left out, where it stood in the text: as deep as what stands there, and as a topic. */
export function takeIn(rows: Rows, left: { line: number; text: string }): OutlineDraftRow[] {
  const at = rows.findLastIndex(({ line }) => line !== undefined && line < left.line) + 1;
  const depth = rows[at]?.depth ?? rows[at - 1]?.depth ?? 0;
  const { text, line } = left;
  const row: OutlineDraftRow = {
    kind: 'topic',
    depth,
    code: '',
    text: cutText(text, LONGEST.title),
    share: null,
  };
  return normaliseRows(rows.toSpliced(at, 0, { ...row, line }));
}

/** Puts a row and all that stands under it before the row above it on its level, under the same row as before. */
export function moveRowUp(rows: Rows, at: number): OutlineDraftRow[] {
  const row = rows[at];
  const before = row ? rows.findLastIndex((other, i) => i < at && other.depth <= row.depth) : -1;
  if (!row || rows[before]?.depth !== row.depth) return [...rows];
  return swapNeighbours(rows, before, at, endOfSubtree(rows, at));
}

/** Puts a row and all that stands under it behind the next row on its level, under the same row as before. */
export function moveRowDown(rows: Rows, at: number): OutlineDraftRow[] {
  const row = rows[at];
  const next = endOfSubtree(rows, at);
  if (!row || rows[next]?.depth !== row.depth) return [...rows];
  return swapNeighbours(rows, at, next, endOfSubtree(rows, next));
}

/** Two subtrees beside each other, from..middle and middle..end, change places. */
function swapNeighbours(rows: Rows, from: number, middle: number, end: number): OutlineDraftRow[] {
  const swapped = [...rows.slice(middle, end), ...rows.slice(from, middle)];
  return normaliseRows([...rows.slice(0, from), ...swapped, ...rows.slice(end)]);
}

function shiftSubtree(rows: Rows, at: number, by: number): OutlineDraftRow[] {
  return normaliseRows(shiftRows(rows, at, endOfSubtree(rows, at), by));
}

function shiftRows(rows: Rows, from: number, to: number, by: number): OutlineDraftRow[] {
  return rows.map((row, i) => (i >= from && i < to ? { ...row, depth: row.depth + by } : row));
}

function deepestUnder(rows: Rows, at: number): number {
  return rows.slice(at, endOfSubtree(rows, at)).reduce((most, row) => Math.max(most, row.depth), 0);
}
