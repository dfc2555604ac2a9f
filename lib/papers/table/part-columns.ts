import { readNumber } from '../part-number.ts';

/** What a column of a table of parts tells. There may be several for the number: question, part and part of that. */
export type PartColumn = 'number' | 'marks' | 'topics' | 'text' | 'scheme' | 'other';

// Words in header rows: common practice on mark sheets and in marking grids.
const NAMES: [PartColumn, RegExp][] = [
  ['scheme', /^(?:mark(?:ing)? (?:scheme|guide)|schemes?|answers?|solutions?|expected answers?)$/],
  [
    'marks',
    /^(?:(?:total |max(?:imum|\.)? |available )?(?:marks?|points?|pts)(?: available| possible)?|out of|max(?:imum|\.)?|tariff|worth)$/,
  ],
  [
    'topics',
    /^(?:(?:syllabus |spec(?:ification)? )?(?:topics?|ref(?:erence)?s?\.?|codes?)|areas?|chapters?|units?|subjects?)(?: ?\(s\))?$/,
  ],
  [
    'number',
    /^(?:#|no\.?|nr\.?|numbers?|q\.?|qu\.?|questions?|(?:question|part|q) ?(?:no\.?|number|#)|(?:sub)?-?parts?|(?:sub)?-?items?|sub-?questions?)$/,
  ],
  [
    'text',
    /^(?:texts?|tasks?|(?:question )?(?:text|wording)|wording|descriptions?|asks?|statements?|what it asks)$/,
  ],
];

/** What a cell of a header row says of its column; null for what is no header. */
function columnNamed(cell: string): PartColumn | null {
  const name = cell
    .toLowerCase()
    .replace(/[\s_]+/g, ' ')
    .replace(/[:*]+$/, '')
    .trim();
  return NAMES.find(([, pattern]) => pattern.test(name))?.[0] ?? null;
}

/** What the columns are by a header row; null where the row is none. */
export function readPartHeader(row: readonly string[]): PartColumn[] | null {
  const columns = row.map(columnNamed);
  const known = columns.filter((column) => column !== null);
  const named = row.filter((cell) => cell !== '').length;
  if (known.length < Math.min(2, named) || known.length < named / 2) return null;
  if (!known.includes('marks') && !known.includes('number')) return null;
  return columns.map((column, i) =>
    // Of several columns of marks ("Marks", "Out of") the last says what there are: the first may hold what was got.
    column === 'marks' && columns.lastIndexOf('marks') !== i ? 'other' : (column ?? 'other'),
  );
}

/**
 * What the columns seem to be, where no row says so: numbers of parts first, then marks, topics by how many cells name
 * one, and of what is left the longest is the text.
 *
 * @param isTopic whether a cell names a topic of the course
 */
export function guessPartColumns(
  rows: readonly (readonly string[])[],
  isTopic: (cell: string) => boolean,
): PartColumn[] {
  const width = Math.max(0, ...rows.map((row) => row.length));
  const cells = Array.from({ length: width }, (_, i) =>
    rows.map((row) => row[i] ?? '').filter((cell) => cell !== ''),
  );
  const columns = cells.map((): PartColumn => 'other');
  // Marks are counts, and come after the numbers: the last column of counts. Alone, it is marks: numbers can be given.
  const marks = cells.findLastIndex((column) => part(column, isCount) > 0.8);
  if (marks >= 0) columns[marks] = 'marks';
  for (const [i, column] of cells.entries()) {
    if (i === marks || column.length === 0) continue;
    const isAhead = columns.slice(0, i).every((one) => one === 'number');
    if (isAhead && part(column, isNumber) > 0.8) columns[i] = 'number';
    else if (part(column, isTopic) > 0.5) columns[i] = 'topics';
  }
  const length = (i: number): number => cells[i]!.join('').length;
  const left = [...columns.keys()].filter((i) => columns[i] === 'other' && length(i) > 0);
  if (left.length > 0) columns[left.reduce((a, b) => (length(b) > length(a) ? b : a))] = 'text';
  return columns;
}

const part = (cells: readonly string[], is: (cell: string) => boolean): number =>
  cells.length === 0 ? 0 : cells.filter(is).length / cells.length;

const isCount = (cell: string): boolean => /^[[(]?\d{1,3}(?:[.,]5)?\s*(?:marks?)?[\])]?$/i.test(cell);

/** Whether a cell holds the number of a part and nothing else: "3 (b)", "(ii)", "b". */
export const isNumber = (cell: string): boolean =>
  readNumber(cell, true)?.rest === '' || /^(?:[a-z]|[ivx]{1,5})$/i.test(cell);
