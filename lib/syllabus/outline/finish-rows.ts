import { LONGEST } from '../outline-row.ts';
import type { OutlineRemark, OutlineRow, RowKind } from '../outline-row.ts';
import { cutText } from './cut-text.ts';
import { kindsOf, parentsOf } from './kinds.ts';
import { repeatedCodes } from './repeated-codes.ts';

/**
 * Gives the rows their kinds, cuts what is too long, and notes codes that stand twice; all in place.
 *
 * @param known what a source says itself of a row's kind, by place; judged by its text where it says nothing
 */
export function finishRows(
  rows: OutlineRow[],
  remarks: OutlineRemark[],
  known: readonly (RowKind | null)[] = [],
): void {
  const kinds = kindsOf(rows);
  rows.forEach((row, i) => {
    row.kind = known[i] ?? kinds[i] ?? 'topic';
    const cut = cutText(row.text, row.kind === 'statement' ? LONGEST.statement : LONGEST.title);
    if (cut !== row.text) remarks.push({ line: row.line, about: 'cut' });
    row.text = cut;
  });
  for (const i of repeatedCodes(rows, parentsOf(rows))) {
    remarks.push({ line: rows[i]?.line ?? 0, about: 'code-twice' });
  }
}
