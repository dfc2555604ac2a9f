import type { OutlineDraftRow } from './outline-row.ts';

/** A tier or option that a syllabus names. */
export interface TierGroup {
  name: string;
  /** How many rows name it; those below them not counted. */
  rows: number;
  /** Whether all of them are switched off; null where some are. */
  off: boolean | null;
}

/** The tiers and options of a syllabus, in the order in which they are first named. */
export function groupsOf(rows: readonly OutlineDraftRow[]): TierGroup[] {
  const byName = Map.groupBy(
    rows.filter(({ group }) => group),
    ({ group }) => group!,
  );
  return [...byName].map(([name, all]) => {
    const off = all.filter((row) => row.off).length;
    return { name, rows: all.length, off: off === all.length ? true : off === 0 ? false : null };
  });
}

/** Switches a tier or option off or on: every row that names it. */
export function switchGroup(rows: readonly OutlineDraftRow[], name: string, off: boolean): OutlineDraftRow[] {
  return rows.map((row) => (row.group === name ? switchedRow(row, off) : row));
}

/** A row switched off or on. */
export function switchedRow(row: OutlineDraftRow, off: boolean): OutlineDraftRow {
  if (off) return { ...row, off };
  const { off: _off, ...on } = row;
  return on;
}
