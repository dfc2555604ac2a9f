import type { OutlineReading } from '../outline-row.ts';
import { readOutline } from '../read-outline.ts';
import { readCase } from './case/read-case.ts';
import { looksLikeCase } from './case/package.ts';
import { readMarkdown } from './read-markdown.ts';
import { hasHeader, readTable } from './table/read-table.ts';
import { isCode } from './table/columns.ts';
import { delimiterOf, parseTable } from './table/parse-table.ts';

/** What a pasted or opened text may be. */
export const TEXT_FORMATS = ['outline', 'markdown', 'table', 'case'] as const;
export type TextFormat = (typeof TEXT_FORMATS)[number];

const READERS: Record<TextFormat, (text: string) => OutlineReading> = {
  outline: readOutline,
  markdown: readMarkdown,
  table: readTable,
  case: readCase,
};

/** Reads a text as what the student says it is. Throws the StudentErrors of that reader. */
export const readText = (text: string, format: TextFormat): OutlineReading => READERS[format](text);

/** What a text seems to be; an outline where nothing else is plain. */
export function recogniseFormat(text: string): TextFormat {
  if (looksLikeCase(text)) return 'case';
  if (isTable(text)) return 'table';
  return isMarkdown(text) ? 'markdown' : 'outline';
}

/** Cells that are consistently parted, by tabs within the lines or under a header row. */
function isTable(text: string): boolean {
  const start = text.slice(0, 50_000);
  const delimiter = delimiterOf(start);
  let rows;
  try {
    ({ rows } = parseTable(start, delimiter));
  } catch {
    // No text at all: the reader of outlines says what is wrong with it.
    return false;
  }
  if (rows.length < 2) return false;
  if (hasHeader(rows)) return true;
  const widths = rows.map(({ cells }) => cells.length);
  const widest = Math.max(...widths);
  const isEven = widths.filter((width) => width === widest).length >= 0.8 * widths.length;
  // An outline may be set in by tabs, and have one behind each number; sentences have commas.
  const isSetIn = rows.filter(({ cells }) => cells[0] === '').length > 0.2 * rows.length;
  if (!isEven || widest < 3 || isSetIn) return false;
  return delimiter === '\t' || rows.filter(({ cells }) => isCode(cells[0] ?? '')).length >= 0.8 * rows.length;
}

const HEADING = /^ {0,3}#{1,6}\s+\S/;
const UNDERLINE = /^ {0,3}(?:=+|-{3,})\s*$/;

/** Headings tell; lists alone read the same as an outline. */
function isMarkdown(text: string): boolean {
  const lines = text.slice(0, 50_000).split(/\r?\n/);
  return lines.some(
    (line, i) =>
      HEADING.test(line) ||
      (UNDERLINE.test(line) &&
        /^ {0,3}[\p{L}\d]/u.test(lines[i - 1] ?? '') &&
        (lines[i - 2] ?? '').trim() === ''),
  );
}
