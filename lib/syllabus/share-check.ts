import { parentsOf } from './outline/kinds.ts';
import type { OutlineDraftRow } from './outline-row.ts';

type Rows = readonly OutlineDraftRow[];

/**
 * Shares of sibling topics that cannot stand as they are:
 * - `zero`: all are given, and add up to nothing;
 * - `not-whole`: given per cent, and adding up to neither 100 nor the per cent of the topic above;
 * - `mixed`: given in different units, such as marks and hours, which do not compare.
 */
export interface ShareTrouble {
  kind: 'zero' | 'not-whole' | 'mixed';
  /** The place of the topic above; -1 at the top. */
  parent: number;
  /** Places of the siblings that have a share and count. */
  rows: number[];
  /** What their shares add up to. */
  sum: number;
  /** What they should add up to; 100, or the per cent of the topic above where that is nearer. */
  whole: number;
}

/** Rounded shares may miss the whole by this much, per cent. */
const SLACK = 1;

/**
 * What is wrong with the shares of a syllabus, in reading order. Topics that are switched off, and all below them,
 * count for nothing.
 */
export function checkShares(rows: Rows): ShareTrouble[] {
  const parents = parentsOf(rows);
  const off = offRows(rows);
  const siblings = Map.groupBy(
    [...rows.keys()].filter((i) => rows[i]!.kind === 'topic' && !off.has(i)),
    (i) => parents[i] ?? -1,
  );
  const troubles: ShareTrouble[] = [];
  for (const [parent, all] of siblings) {
    const trouble = checkSiblings(rows, parent, all);
    if (trouble) troubles.push(trouble);
  }
  return troubles;
}

function checkSiblings(rows: Rows, parent: number, all: readonly number[]): ShareTrouble | null {
  const given = all.filter((i) => rows[i]!.share !== null);
  if (given.length === 0) return null;
  const sum = given.reduce((total, i) => total + rows[i]!.share!, 0);
  const units = new Set(given.map((i) => rows[i]!.unit ?? 'parts'));
  const found = { parent, rows: given, sum, whole: wholeOf(rows[parent], sum) };
  if (units.size > 1) return { ...found, kind: 'mixed' };
  if (sum === 0) return given.length === all.length ? { ...found, kind: 'zero' } : null;
  if (!units.has('percent')) return null;
  const isTooMuch = sum > found.whole + SLACK;
  const isTooLittle = given.length === all.length && sum < found.whole - SLACK;
  return isTooMuch || isTooLittle ? { ...found, kind: 'not-whole' } : null;
}

function wholeOf(parent: OutlineDraftRow | undefined, sum: number): number {
  const above = parent?.unit === 'percent' ? (parent.share ?? 0) : 0;
  return above > 0 && Math.abs(above - sum) < Math.abs(100 - sum) ? above : 100;
}

/** Shares in proportion, so that they add up to the whole; to one decimal place, the last one taking up the rest. */
export function scaleShares(rows: Rows, trouble: ShareTrouble): OutlineDraftRow[] {
  const scaled = new Map<number, number>();
  let left = trouble.whole;
  trouble.rows.forEach((at, i) => {
    const isLast = i === trouble.rows.length - 1;
    const share = isLast ? left : Math.round((10 * rows[at]!.share! * trouble.whole) / trouble.sum) / 10;
    scaled.set(at, Math.max(0, Math.round(10 * share) / 10));
    left -= share;
  });
  return rows.map((row, i) => (scaled.has(i) ? { ...row, share: scaled.get(i)! } : row));
}

/** The same siblings without shares: all weigh the same. */
export function evenShares(rows: Rows, trouble: ShareTrouble): OutlineDraftRow[] {
  const among = new Set(trouble.rows);
  return rows.map((row, i) => {
    if (!among.has(i)) return row;
    const { unit: _unit, ...rest } = row;
    return { ...rest, share: null };
  });
}

/** Places of the rows that are switched off, or stand under one that is. */
export function offRows(rows: Rows): Set<number> {
  const parents = parentsOf(rows);
  const off = new Set<number>();
  rows.forEach((row, i) => {
    if (row.off || off.has(parents[i] ?? -1)) off.add(i);
  });
  return off;
}
