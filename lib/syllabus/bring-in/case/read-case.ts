import { readLabel } from '../../outline/label.ts';
import { nest } from '../../outline/nesting.ts';
import { readTail } from '../../outline/tail.ts';
import type { OutlineReading, OutlineRemark } from '../../outline-row.ts';
import { LONGEST } from '../../outline-row.ts';
import { layTree } from '../lay-tree.ts';
import { placeRows } from '../place-rows.ts';
import type { Placed } from '../place-rows.ts';
import { parsePackage } from './package.ts';
import type { CaseItem } from './package.ts';
import { parentsOf } from './parents.ts';

/**
 * Reads a syllabus from a 1EdTech CASE package (1.0 or 1.1). Items keep their human coding schemes, and stand as
 * their isChildOf associations say, in the order of their sequence numbers; by their codes where the package has no
 * such associations. Circles are opened, and items whose parent is missing stand at the top: remarks say so.
 * Throws a StudentError: those of parsePackage; `errorSyllabusEmpty` where no item has a text.
 */
export function readCase(text: string): OutlineReading {
  const all = parsePackage(text);
  const { parents, sequence, remarks } = parentsOf(all);
  const { items } = all;
  const byCode = new Intl.Collator('en', { numeric: true });
  const { order, depths, looped } = layTree(
    parents,
    (a, b) =>
      compareNumbers(sequence[a]!, sequence[b]!) ||
      (sequence[a] === Infinity ? byCode.compare(codeOf(items[a]!), codeOf(items[b]!)) : 0),
  );
  for (const i of looped) remarks.push({ line: i + 1, about: 'circle' });
  const isFlat = all.associations.every(({ associationType }) => associationType !== 'isChildOf');
  const levels = isFlat ? depthsByCode(order.map((i) => items[i]!)) : order.map((i) => depths[i]!);
  const placed = order.flatMap((i, at): Placed[] => {
    const depth = levels[at]!;
    const isLeaf = (levels[at + 1] ?? 0) <= depth;
    return rowsOf(items[i]!, { line: i + 1, depth, isLeaf }, remarks);
  });
  return placeRows(placed, remarks, all.document.title || null);
}

/** Both may be Infinity, whose difference is no number. */
const compareNumbers = (a: number, b: number): number => (a === b ? 0 : a < b ? -1 : 1);

const clean = (text: string | null | undefined): string => (text ?? '').replace(/\s+/g, ' ').trim();

const codeOf = ({ humanCodingScheme, listEnumeration }: CaseItem): string =>
  clean(humanCodingScheme) || clean(listEnumeration);

interface Spot {
  line: number;
  depth: number;
  isLeaf: boolean;
}

/** What publishers call items that assess; common practice, since the standard leaves the words free. */
const POINT =
  /\b(?:standard|statement|objective|outcome|indicator|expectation|competency|skill|element)s?\b/i;

/** A row for an item; two for a short title with a longer statement, which then stands under it. */
function rowsOf(item: CaseItem, { line, depth, isLeaf }: Spot, remarks: OutlineRemark[]): Placed[] {
  const full = clean(item.fullStatement);
  const short = clean(item.abbreviatedStatement);
  if (full === '' && short === '') {
    remarks.push({ line, about: 'no-text', text: codeOf(item) });
    return [];
  }
  const { text, share, unit = 'parts', group = '' } = readTail(full || short);
  const base = { line, depth, code: codeOf(item), share, unit, group };
  if (isLeaf && depth > 0) {
    const isPoint = POINT.test(item.CFItemType ?? '');
    return [{ ...base, kind: isPoint ? 'statement' : null, text }];
  }
  const title = short && short.length < text.length ? short : text;
  const row: Placed = { ...base, kind: 'topic', text: title };
  // What a title leaves out is still asked; above other items it only leads up to them.
  return isLeaf && title !== text && text.length <= LONGEST.statement
    ? [row, { ...base, kind: 'statement', depth: depth + 1, text, share: null }]
    : [row];
}

/** Depths by codes alone, for packages that list items and say nothing of where they stand. */
function depthsByCode(items: readonly CaseItem[]): number[] {
  const rows = items.map((item) => {
    const labelled = readLabel(`${codeOf(item)} X`);
    return labelled?.rest === 'X'
      ? { indent: 0, mark: { kind: 'label' as const, label: labelled.label } }
      : { indent: 0, mark: { kind: 'none' as const } };
  });
  return nest(rows).map(({ depth }) => depth);
}
