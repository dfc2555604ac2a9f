import { StudentError } from '#lib/model/student-error.ts';
import { readLabel } from '../../outline/label.ts';
import { nest } from '../../outline/nesting.ts';
import type { Nestable } from '../../outline/open-rows.ts';
import type { OutlineReading, OutlineRemark } from '../../outline-row.ts';
import { layTree } from '../lay-tree.ts';
import { placeRows } from '../place-rows.ts';
import type { Placed } from '../place-rows.ts';
import { guessColumns, readHeader } from './columns.ts';
import { parseTable } from './parse-table.ts';
import type { TableRow } from './parse-table.ts';
import { nodesOf } from './table-rows.ts';
import type { Node, Shape } from './table-rows.ts';

/** A header stands within the first rows: a title may come before it. */
const HEADER_WITHIN = 5;

/**
 * Reads a syllabus from a table: a CSV file (RFC 4180), or cells pasted from a spreadsheet. The columns are told by
 * their header row, or guessed where there is none. Rows are nested by a column of parents; else by several columns of
 * topics, the outermost first; else by their codes.
 * Throws a StudentError: those of parseTable; `errorTableNoText` where no column holds topics or statements.
 */
export function readTable(text: string): OutlineReading {
  const { rows, remarks } = parseTable(text);
  const { front, body, shape } = headerOf(rows);
  if (!shape.columns.includes('topic') && !shape.columns.includes('statement'))
    throw new StudentError('errorTableNoText');
  const made = nodesOf(body, shape);
  remarks.push(...made.remarks);
  for (const { line, cells } of front.slice(1))
    remarks.push({ line, about: 'left-out', text: cells.filter(Boolean).join(' · ') });
  const placed = shape.columns.includes('parent')
    ? placedByParent(made.nodes, remarks)
    : made.levels > 1
      ? placedByLevel(made.nodes)
      : placedByCode(made.nodes, remarks);
  return placeRows(placed, remarks, front[0]?.cells.find(Boolean) ?? null);
}

/** Whether a text has a header row, and so is a table whatever else it looks like. */
export const hasHeader = (rows: readonly TableRow[]): boolean =>
  rows.slice(0, HEADER_WITHIN).some(({ cells }) => readHeader(cells) !== null);

function headerOf(rows: readonly TableRow[]): { front: TableRow[]; body: TableRow[]; shape: Shape } {
  for (const [i, { cells }] of rows.slice(0, HEADER_WITHIN).entries()) {
    const columns = readHeader(cells);
    const body = rows.slice(i + 1);
    if (columns && body.length > 0)
      return { front: rows.slice(0, i), body, shape: { columns: settled(columns, body), heading: cells } };
  }
  return {
    front: [],
    body: [...rows],
    shape: { columns: guessColumns(rows.map(({ cells }) => cells)), heading: [] },
  };
}

/** A column called "Level" that holds nothing but numbers is no column of tiers. */
const settled = (columns: Shape['columns'], body: readonly TableRow[]): Shape['columns'] =>
  columns.map((column, i) =>
    column === 'group' && body.every(({ cells }) => /^\d*$/.test(cells[i] ?? '')) ? 'other' : column,
  );

function placedByParent(nodes: readonly Node[], remarks: OutlineRemark[]): Placed[] {
  const key = (text: string): string => text.toLowerCase();
  const byName = new Map<string, number>();
  // A code leads further than a title, and the first of two alike further than the second.
  for (const name of ['text', 'code'] as const)
    for (const [i, node] of [...nodes.entries()].reverse())
      if (node[name] && node.kind !== 'statement') byName.set(key(node[name]), i);
  const parents = nodes.map((node, i) => {
    if (node.kind === 'statement' && nodes[i - 1]?.line === node.line) return i - 1;
    const parent = node.parent === '' ? null : byName.get(key(node.parent));
    if (parent === undefined) remarks.push({ line: node.line, about: 'no-parent' });
    return parent ?? null;
  });
  const { order, depths, looped } = layTree(parents);
  for (const i of looped) remarks.push({ line: nodes[i]!.line, about: 'circle' });
  return order.map((i) => ({ ...nodes[i]!, depth: depths[i]! }));
}

/** By their columns; where a row leaves an outer column empty and none was named before, its topics move out. */
function placedByLevel(nodes: readonly Node[]): Placed[] {
  const open: number[] = [];
  return nodes.map((node) => {
    while (open.length > 0 && open.at(-1)! >= node.level) open.pop();
    const depth = open.length;
    if (node.kind !== 'statement') open.push(node.level);
    return { ...node, depth };
  });
}

function placedByCode(nodes: readonly Node[], remarks: OutlineRemark[]): Placed[] {
  const topics = nodes.filter(({ kind }) => kind !== 'statement');
  const nested = nest(topics.map(nestableOf));
  const depthOf = new Map(topics.map((topic, i) => [topic, nested[i]!]));
  let above = 0;
  return nodes.map((node) => {
    const spot = depthOf.get(node);
    if (!spot) return { ...node, depth: above + 1 };
    if (spot.skipped) remarks.push({ line: node.line, about: 'level-skipped' });
    if (spot.lifted) remarks.push({ line: node.line, about: 'too-deep' });
    above = spot.depth;
    return { ...node, depth: spot.depth };
  });
}

function nestableOf({ code }: Node): Nestable {
  const labelled = code ? readLabel(`${code} X`) : null;
  return labelled?.rest === 'X'
    ? { indent: 0, mark: { kind: 'label', label: labelled.label } }
    : { indent: 0, mark: { kind: 'none' } };
}
