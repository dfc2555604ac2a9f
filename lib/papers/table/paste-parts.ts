import type { Id } from '#lib/model/basics.ts';
import { LONGEST_LETTERING } from '#lib/model/lettering.ts';
import { MOST_MARKS } from '#lib/model/mark-count.ts';
import { LONGEST_NUMBER, MOST_PARTS } from '#lib/model/paper.ts';
import { StudentError } from '#lib/model/student-error.ts';
import type { Topic } from '#lib/model/topic.ts';
import { parseTable, type TableRow } from '#lib/syllabus/bring-in/table/parse-table.ts';
import { numberKey } from '../part-number.ts';
import { guessPartColumns, type PartColumn, readPartHeader } from './part-columns.ts';
import { type NumberReader, numberReader } from './row-numbers.ts';
import { type NamedTopics, topicCells } from './topic-cells.ts';

/**
 * What was understood with a guess only, or not at all.
 *
 * Parts that are there:
 * - `noNumber`: it has no number;
 * - `numberFromAbove`: its number was made whole from the row above, as where cells are merged;
 * - `numberTwice`: a part before it has the same number;
 * - `noMarks`: it has no marks (as where one cell is merged over several parts), so that it is out of 0;
 * - `zeroMarks`: it is out of 0 as written;
 * - `marksUnread`: its marks are no number of marks, so that it is out of 0;
 * - `overTotal`: it alone is out of more than the paper's total;
 * - `topicsFromAbove`: its topics are those of the row above, in the same question, as where cells are merged;
 * - `topicUnknown`, `topicSeveral`: a name is no topic of the course, or that of several;
 * - `cut`: its text or number was too long and is kept in part.
 *
 * Of the table:
 * - `totalRow`: a row that gives the total, and is no part; `totalDiffers`: the parts add up to something else;
 * - `leftOut`: a row that is no part; `otherColumn`: a cell of a column that nobody could tell;
 * - `tooMany`: a row after as many as are kept; `quoteOpen`: a quotation mark is never closed.
 */
export type PasteAbout =
  | 'noNumber'
  | 'numberFromAbove'
  | 'numberTwice'
  | 'noMarks'
  | 'zeroMarks'
  | 'marksUnread'
  | 'overTotal'
  | 'topicsFromAbove'
  | 'topicUnknown'
  | 'topicSeveral'
  | 'cut'
  | 'totalRow'
  | 'totalDiffers'
  | 'leftOut'
  | 'otherColumn'
  | 'tooMany'
  | 'quoteOpen';

export interface PasteRemark {
  /** The row of the table, from 1; 0 for the whole. */
  line: number;
  about: PasteAbout;
  /** What is written there; empty where nothing is. */
  text: string;
}

/** A part as pasted. */
export interface PastedPart {
  line: number;
  number: string;
  marks: number;
  topicIds: Id[];
  text: string;
  scheme: string;
}

export interface Pasted {
  parts: PastedPart[];
  /** Total that the table or the paper gives; null where neither does. */
  total: number | null;
  /** In the order of the table. */
  remarks: PasteRemark[];
}

/** A header stands within the first rows: a title may come before it. */
const HEADER_WITHIN = 5;

/**
 * Reads the parts of a paper from a pasted table: cells of a spreadsheet, or lines of RFC 4180. Columns are told by
 * their headings, or by what they hold. Nothing is thrown away silently.
 *
 * @param total the paper's printed total; null where none is
 * Errors: StudentError `errorPartsNone` where there is no row with a number or marks, or no text.
 */
export function pasteParts(text: string, topics: readonly Topic[], total: number | null = null): Pasted {
  if (text.trim() === '') throw new StudentError('errorPartsNone');
  const table = tableOf(text);
  const remarks: PasteRemark[] = table.remarks.map(({ line }) => ({ line, about: 'quoteOpen', text: '' }));
  const readTopics = topicCells(topics);
  const { front, columns, body } = headed(table.rows, (cell) => readTopics(cell).topicIds.length > 0);
  for (const row of front) remarks.push({ line: row.line, about: 'leftOut', text: written(row) });
  const reader = new PartReader(columns, readTopics, remarks);
  body.forEach((row) => reader.read(row));
  if (reader.parts.length === 0) throw new StudentError('errorPartsNone');
  const whole = total ?? reader.total;
  checkParts(reader.parts, whole, remarks);
  return { parts: reader.parts, total: whole, remarks: remarks.sort((a, b) => a.line - b.line) };
}

/** What parseTable says of a text that is none is about a syllabus. */
function tableOf(text: string): ReturnType<typeof parseTable> {
  try {
    return parseTable(text);
  } catch (error) {
    throw error instanceof StudentError ? new StudentError('errorPartsNone') : error;
  }
}

function headed(
  rows: readonly TableRow[],
  isTopic: (cell: string) => boolean,
): { front: TableRow[]; columns: PartColumn[]; body: TableRow[] } {
  for (const [i, { cells }] of rows.slice(0, HEADER_WITHIN).entries()) {
    const columns = readPartHeader(cells);
    if (columns) return { front: rows.slice(0, i), columns, body: rows.slice(i + 1) };
  }
  return {
    front: [],
    columns: guessPartColumns(
      rows.map(({ cells }) => cells),
      isTopic,
    ),
    body: [...rows],
  };
}

const written = ({ cells }: TableRow): string => cells.filter((cell) => cell !== '').join(' · ');

/** Reads rows one after the other: what is merged is taken from those above. */
class PartReader {
  readonly parts: PastedPart[] = [];
  total: number | null = null;
  readonly #columns: readonly PartColumn[];
  readonly #readTopics: (cell: string) => NamedTopics;
  readonly #readNumber: NumberReader = numberReader();
  readonly #remarks: PasteRemark[];

  constructor(
    columns: readonly PartColumn[],
    readTopics: (cell: string) => NamedTopics,
    remarks: PasteRemark[],
  ) {
    this.#columns = columns;
    this.#readTopics = readTopics;
    this.#remarks = remarks;
  }

  read(row: TableRow): void {
    const { line } = row;
    const remark = (about: PasteAbout, text = ''): void => void this.#remarks.push({ line, about, text });
    const marks = this.#cells(row, 'marks').join(' ');
    if (row.cells.some((cell) => /^(?:grand |paper |sub-?)?totals?\b/i.test(cell))) {
      this.total = /^sub/i.test(written(row)) ? this.total : (marksIn(marks) ?? this.total);
      return remark('totalRow', written(row));
    }
    const numbers = this.#columns.flatMap((column, i) => (column === 'number' ? [row.cells[i] ?? ''] : []));
    if (marks === '' && numbers.every((cell) => cell === '')) return remark('leftOut', written(row));
    if (this.parts.length >= MOST_PARTS) return remark('tooMany', written(row));
    for (const cell of this.#cells(row, 'other')) remark('otherColumn', cell);
    const number = this.#readNumber(numbers);
    if (number.isFromAbove) remark('numberFromAbove', number.text);
    const cut = (value: string, most: number): string => {
      if (value.length > most) remark('cut', value.slice(most));
      return value.slice(0, most).trim();
    };
    this.parts.push({
      line,
      number: cut(number.text, LONGEST_NUMBER),
      marks: this.#marks(marks, remark),
      topicIds: this.#topics(this.#cells(row, 'topics').join('; '), number.question, remark),
      text: cut(this.#cells(row, 'text').join('\n'), LONGEST_LETTERING),
      scheme: cut(this.#cells(row, 'scheme').join('\n'), LONGEST_LETTERING),
    });
  }

  #cells({ cells }: TableRow, column: PartColumn): string[] {
    // Cells beyond the last column are of none.
    return cells.filter((cell, i) => cell !== '' && (this.#columns[i] ?? 'other') === column);
  }

  #marks(cell: string, remark: (about: PasteAbout, text?: string) => void): number {
    const marks = marksIn(cell);
    if (cell === '') remark('noMarks');
    else if (marks === null) remark('marksUnread', cell);
    else if (marks === 0) remark('zeroMarks', cell);
    return marks ?? 0;
  }

  #above: { question: string; topicIds: Id[] } | null = null;

  #topics(cell: string, question: string, remark: (about: PasteAbout, text?: string) => void): Id[] {
    const { topicIds, unknown, several } = this.#readTopics(cell);
    for (const name of unknown) remark('topicUnknown', name);
    for (const name of several) remark('topicSeveral', name);
    const above = this.#above;
    if (cell === '' && question !== '' && above?.question === question && above.topicIds.length > 0) {
      remark('topicsFromAbove');
      return above.topicIds;
    }
    this.#above = { question, topicIds: topicIds.slice(0, 20) };
    return this.#above.topicIds;
  }
}

/** The marks that a cell gives, such as "4", "[4]", "4 marks" or "2,5"; null where it gives none. */
function marksIn(cell: string): number | null {
  const [, count] =
    /^[[(]?\s*(\d{1,4}(?:[.,][05])?)\s*(?:marks?|m|pts?|points?)?\s*[\])]?\.?$/i.exec(cell) ?? [];
  const marks = count === undefined ? null : Number(count.replace(',', '.'));
  return marks !== null && marks <= MOST_MARKS ? marks : null;
}

function checkParts(parts: readonly PastedPart[], total: number | null, remarks: PasteRemark[]): void {
  const seen = new Set<string>();
  for (const { line, number, marks } of parts) {
    const key = numberKey(number);
    if (number === '') remarks.push({ line, about: 'noNumber', text: '' });
    else if (seen.has(key)) remarks.push({ line, about: 'numberTwice', text: number });
    seen.add(key);
    if (total !== null && marks > total) remarks.push({ line, about: 'overTotal', text: String(marks) });
  }
  const sum = parts.reduce((all, { marks }) => all + marks, 0);
  if (total !== null && sum !== total) remarks.push({ line: 0, about: 'totalDiffers', text: String(sum) });
}
