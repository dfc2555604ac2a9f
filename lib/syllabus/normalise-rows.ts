import type { OutlineDraftRow } from './outline-row.ts';

/**
 * Rows put right: the first at depth 0, none more than one deeper than the row before, and a statement only where it
 * stands under a topic with nothing below it (it becomes a topic elsewhere). Rows that are right already stay the
 * same objects.
 */
export function normaliseRows<Row extends OutlineDraftRow>(rows: readonly Row[]): Row[] {
  let before = -1;
  const level = rows.map((row) => {
    const depth = Math.max(0, Math.min(row.depth, before + 1));
    before = depth;
    return depth === row.depth ? row : { ...row, depth };
  });
  return level.map((row, i) => {
    const hasChildren = (level[i + 1]?.depth ?? 0) > row.depth;
    return row.kind === 'statement' && (hasChildren || row.depth === 0) ? { ...row, kind: 'topic' } : row;
  });
}

/** The place behind the last row that stands under the row at a place. */
export function endOfSubtree(rows: readonly { depth: number }[], at: number): number {
  const depth = rows[at]?.depth ?? 0;
  const end = rows.findIndex((row, i) => i > at && row.depth <= depth);
  return end < 0 ? rows.length : end;
}
