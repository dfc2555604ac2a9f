import { readLabel } from '../../outline/label.ts';
import { isCommandWord } from '../../command-words.ts';

/** What a column of a table tells. A table may have several columns of topics, from the outermost to the innermost. */
export type Column =
  'code' | 'topic' | 'statement' | 'parent' | 'percent' | 'marks' | 'hours' | 'parts' | 'group' | 'other';

// Words in header rows: common practice in specifications and schemes of work.
const NAMES: [Column, RegExp][] = [
  ['parent', /^(?:parent(?: (?:code|ref|topic|id))?|under|belongs to|part of)$/],
  ['percent', /^(?:%|per ?cent(?:age)?|weight(?:ing)?(?: \(?%\)?)?|(?:exam )?share|% .*|.* %)$/],
  ['marks', /^(?:(?:total |exam )?marks?(?: available)?|points?)$/],
  ['hours', /^(?:(?:teaching |guided learning |study )?hours?|hrs?|glh|(?:teaching )?time)$/],
  ['parts', /^(?:lessons?|periods?|lectures?|weeks?|credits?|parts)$/],
  ['group', /^(?:tiers?|levels?|options?|routes?|pathways?|higher ?\/ ?foundation|hl ?\/ ?sl|sl ?\/ ?hl)$/],
  [
    'code',
    /^(?:codes?|no\.?|nr\.?|number|#|id|ref(?:erence)?\.?|(?:spec(?:ification)?|topic|statement|syllabus|section|item|content) (?:code|ref(?:erence)?|no\.?|number|id)\.?)$/,
  ],
  [
    'statement',
    /^(?:statements?|(?:learning|assessment) (?:outcomes?|objectives?)|outcomes?|objectives?|(?:specification )?points?|(?:subject )?content|descriptions?|details?|what (?:you|students) (?:need to|should|must) (?:know|learn).*|(?:students|candidates|learners|you) (?:should|can|will|must)\b.*)$/,
  ],
  [
    'topic',
    /^(?:titles?|names?|headings?|(?:main )?(?:topics?|themes?)(?: (?:title|name|area))?|sub-? ?(?:topics?|sections?|themes?|headings?)|units?(?: (?:title|name))?|modules?|sections?|chapters?|areas?(?: of study)?|strands?|components?|text|subject)$/,
  ],
];

/** What a cell of a header row says of its column; null for what is no header. */
export function columnNamed(cell: string): Column | null {
  const name = cell
    .trim()
    .toLowerCase()
    .replace(/[\s_]+/g, ' ')
    .replace(/[:*]+$/, '');
  return NAMES.find(([, pattern]) => pattern.test(name))?.[0] ?? null;
}

/** What the columns are by a header row; null where the row is none. */
export function readHeader(row: readonly string[]): Column[] | null {
  const columns = row.map(columnNamed);
  const known = columns.filter((column) => column !== null);
  const hasText = known.includes('topic') || known.includes('statement');
  const named = row.filter((cell) => cell.trim() !== '').length;
  // Of a row of topics, one or another may be called "Units"; of a header, most cells are.
  return hasText && known.length >= Math.min(2, named) && known.length >= named / 2
    ? columns.map((column) => column ?? 'other')
    : null;
}

/** What the columns seem to be, where no row says so. */
export function guessColumns(rows: readonly (readonly string[])[]): Column[] {
  const width = rows.reduce((most, row) => Math.max(most, row.length), 0);
  const columns = Array.from({ length: width }, (_, i) =>
    guessColumn(rows.map((row) => (row[i] ?? '').trim()).filter((cell) => cell !== '')),
  );
  const firstCode = columns.indexOf('code');
  // One code a row: further numbers are something else.
  return columns.map((column, i) => (column === 'code' && i !== firstCode ? 'other' : column));
}

function guessColumn(cells: readonly string[]): Column {
  const part = (is: (cell: string) => boolean): number => cells.filter(is).length / Math.max(1, cells.length);
  if (cells.length === 0) return 'other';
  if (part((cell) => /^\d{1,3}(?:[.,]\d+)?\s*%$/.test(cell)) > 0.8) return 'percent';
  if (part((cell) => /^\d+\s*marks?$/i.test(cell)) > 0.8) return 'marks';
  if (part((cell) => /^\d+(?:[.,]\d+)?\s*h(?:ours?|rs?)?$/i.test(cell)) > 0.8) return 'hours';
  if (part(isCode) > 0.8) return 'code';
  if (part((cell) => /^[\d.,\s]+$/.test(cell)) > 0.5) return 'other';
  const readsAsPoint = (cell: string): boolean =>
    isCommandWord((cell.split(/\s/)[0] ?? '').toLowerCase()) || cell.split(/\s/).length > 8;
  return part(readsAsPoint) > 0.6 ? 'statement' : 'topic';
}

/** Whether a cell is nothing but a code, such as "1.2", "(a)" or "A1". */
export function isCode(cell: string): boolean {
  const label = readLabel(`${cell.trim()} X`);
  return label !== null && label.rest === 'X' && label.label.word === null;
}
