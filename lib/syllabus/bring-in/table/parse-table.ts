import Papa from 'papaparse';
import { StudentError } from '#lib/model/student-error.ts';
import type { OutlineRemark } from '../../outline-row.ts';
import { checkIsText } from '../../outline/plain-lines.ts';

/** A row of a table. */
export interface TableRow {
  /** Its place among all rows of the table, from 1. */
  line: number;
  cells: string[];
}

const DELIMITERS = ['\t', ',', ';'] as const;
export type Delimiter = (typeof DELIMITERS)[number];

/**
 * The rows of a table in the form of RFC 4180 (quoted cells may hold delimiters, line ends and doubled quotes), with
 * commas, semicolons or tabs between the cells. Empty rows stay out. Where a quote is never closed, all quotes are
 * taken as characters, and a remark says so.
 * Errors: StudentErrors of checkIsText; `errorSyllabusEmpty`.
 */
export function parseTable(
  text: string,
  delimiter: Delimiter = delimiterOf(text),
): { rows: TableRow[]; remarks: OutlineRemark[] } {
  checkIsText(text);
  const plain = text.replace(/^\ufeff/, '');
  const parsed = Papa.parse<string[]>(plain, { delimiter });
  const open = parsed.errors.find(({ code }) => code === 'MissingQuotes');
  // No text holds NUL: see checkIsText.
  const { data } = open ? Papa.parse<string[]>(plain, { delimiter, quoteChar: '\0' }) : parsed;
  const rows = data
    .map((cells, i) => ({ line: i + 1, cells: cells.map(tidyCell) }))
    .filter(({ cells }) => cells.some((cell) => cell !== ''));
  if (rows.length === 0) throw new StudentError('errorSyllabusEmpty');
  return { rows, remarks: open ? [{ line: (open.row ?? 0) + 1, about: 'quote-open' }] : [] };
}

const tidyCell = (cell: string): string => cell.replace(/[\s\u200b\ufeff]+/g, ' ').trim();

/** The delimiter that parts the first rows into most cells of the same number; tabs and commas come first. */
export function delimiterOf(text: string): Delimiter {
  const start = text.slice(0, 20_000);
  const score = (delimiter: Delimiter): number => {
    const rows = Papa.parse<string[]>(start, { delimiter, preview: 50 }).data.filter(
      (cells) => cells.length > 1 || cells[0]?.trim(),
    );
    const widths = Map.groupBy(rows, (cells) => cells.length);
    const [width, alike] = [...widths].reduce<[number, number]>(
      (best, [cells, all]) => (all.length > best[1] ? [cells, all.length] : best),
      [1, 0],
    );
    return width < 2 ? 0 : alike / rows.length;
  };
  const scores = DELIMITERS.map(score);
  return DELIMITERS[scores.indexOf(Math.max(...scores))] ?? ',';
}
