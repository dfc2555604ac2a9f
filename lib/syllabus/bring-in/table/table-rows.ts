import type { ShareUnit } from '#lib/model/topic.ts';
import type { OutlineRemark, RowKind } from '../../outline-row.ts';
import { readTail } from '../../outline/tail.ts';
import { readLabel } from '../../outline/label.ts';
import { SHARE_UNITS, cellGroup, cellNumber } from './cells.ts';
import type { Column } from './columns.ts';
import type { TableRow } from './parse-table.ts';

/** A topic or statement that a row of a table tells of, before it has its place. */
export interface Node {
  line: number;
  /** Null where its text is to decide. */
  kind: RowKind | null;
  /** Which of the columns of topics it is from; statements come one further in. */
  level: number;
  code: string;
  text: string;
  share: number | null;
  unit: ShareUnit;
  group: string;
  /** What its row names as the topic above it; empty where it names none. */
  parent: string;
}

export interface TableNodes {
  nodes: Node[];
  remarks: OutlineRemark[];
  /** How many columns of topics there are. */
  levels: number;
}

/** A table by its columns. */
export interface Shape {
  columns: readonly Column[];
  /** The cells of the header row; empty where there is none. */
  heading: readonly string[];
}

/** The topics and statements of a table, in its order. A topic that is named again in the next row is the same. */
export function nodesOf(rows: readonly TableRow[], shape: Shape): TableNodes {
  const layout = layoutOf(rows, shape);
  const nodes: Node[] = [];
  const remarks: OutlineRemark[] = [];
  const open: (Node | undefined)[] = [];
  for (const row of rows) {
    const made = nodesOfRow(row, layout, open);
    if (made.length === 0 && !open.some((node) => node?.line === row.line))
      remarks.push({ line: row.line, about: 'no-text', text: row.cells.filter(Boolean).join(' · ') });
    else addNumbers(row, layout, made, open, remarks);
    nodes.push(...made);
  }
  return { nodes, remarks, levels: layout.topics.length };
}

interface Layout extends Shape {
  /** Places of the columns of topics, the outermost first. */
  topics: number[];
  statement: number;
  /** The column of codes that goes with a column of text, by the place of the latter. */
  codeFor: Map<number, number>;
  /** The only column of codes, where it goes with the innermost text of each row. */
  code: number;
  parent: number;
  group: number;
  share: number;
  unit: ShareUnit;
}

function layoutOf(rows: readonly TableRow[], shape: Shape): Layout {
  const { columns } = shape;
  const at = (column: Column): number => columns.indexOf(column);
  const places = (column: Column): number[] => [...columns.keys()].filter((i) => columns[i] === column);
  const topics = places('topic');
  const statement = at('statement');
  const codes = places('code');
  const codeFor = new Map<number, number>();
  if (codes.length > 1) {
    const texts = [...topics, ...(statement < 0 ? [] : [statement])];
    for (const code of codes) {
      const text = texts.find((place) => place > code);
      if (text !== undefined && !codeFor.has(text)) codeFor.set(text, code);
    }
  }
  const filled = (unit: ShareUnit): number =>
    rows.filter(({ cells }) => cellNumber(cells[at(unit)] ?? '') !== null).length;
  const unit = SHARE_UNITS.toSorted((a, b) => filled(b) - filled(a))[0] ?? 'parts';
  return {
    ...shape,
    // Without topics, the statements are what there is: their texts and codes tell them apart.
    topics: topics.length > 0 ? topics : [statement],
    statement: topics.length > 0 ? statement : -1,
    codeFor,
    code: codes.length > 1 ? -1 : (codes[0] ?? -1),
    parent: at('parent'),
    group: at('group'),
    share: at(unit),
    unit,
  };
}

function nodesOfRow({ line, cells }: TableRow, layout: Layout, open: (Node | undefined)[]): Node[] {
  const cell = (place: number): string => cells[place] ?? '';
  const made: Node[] = [];
  const add = (place: number, kind: RowKind | null, level: number): Node => {
    const { code, ...rest } = readCell(cell(place));
    const own = layout.codeFor.get(place);
    const node = { line, kind, level, ...rest, code: own === undefined ? code : cell(own) || code };
    made.push({ ...node, parent: cell(layout.parent) });
    return made.at(-1)!;
  };
  layout.topics.forEach((place, level) => {
    const text = cell(place);
    const isSame = open[level] !== undefined && readCell(text).text === open[level].text;
    if (text === '' || (isSame && layout.parent < 0 && (layout.statement >= 0 || layout.topics.length > 1)))
      return;
    open.length = level;
    open[level] = add(place, null, level);
  });
  if (layout.statement >= 0 && cell(layout.statement) !== '')
    add(layout.statement, 'statement', layout.topics.length);
  const innermost = made.at(-1);
  if (innermost && layout.code >= 0) innermost.code = cell(layout.code) || innermost.code;
  return made;
}

/** A cell of text with what it says beside its topic: "1.1 Swell (12 marks)". */
function readCell(cell: string): Pick<Node, 'code' | 'text' | 'share' | 'unit' | 'group'> {
  const labelled = readLabel(cell);
  const label = labelled?.label.sure && labelled.rest !== '' ? labelled : null;
  const { text, share, unit = 'parts', group } = readTail(label?.rest ?? cell);
  const option = label?.label.word === 'option' ? label.label.code : '';
  return { code: label?.label.code ?? '', text, share, unit, group: group ?? option };
}

/** Gives the tier of a row to its innermost node, and its number to its topic: those of statements add up. */
function addNumbers(
  { line, cells }: TableRow,
  layout: Layout,
  made: readonly Node[],
  open: readonly (Node | undefined)[],
  remarks: OutlineRemark[],
): void {
  const last = made.at(-1);
  const tier = cellGroup(cells[layout.group] ?? '', layout.heading[layout.group] ?? '');
  if (last && tier) last.group = tier;
  const written = cells[layout.share] ?? '';
  const number = cellNumber(written);
  if (number === null) {
    if (!/^[-–—]?$/.test(written)) remarks.push({ line, about: 'number-unread' });
    return;
  }
  const isStatement = last?.kind === 'statement';
  const topic = isStatement ? open.findLast((node) => node !== undefined) : last;
  if (topic) addShare(topic, number, layout.unit, isStatement);
}

function addShare(topic: Node, number: number, unit: ShareUnit, isPart: boolean): void {
  const before = isPart && topic.unit === unit ? (topic.share ?? 0) : 0;
  topic.share = before + number;
  topic.unit = unit;
}
