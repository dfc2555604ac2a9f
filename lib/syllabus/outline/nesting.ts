import { DEEPEST } from '../outline-row.ts';
import type { Label, Reading } from './label.ts';
import {
  SLACK,
  depthUnder,
  holdsMarked,
  holdsUnmarked,
  isChapter,
  isLevel,
  openListOf,
} from './open-rows.ts';
import type { Nestable, Open } from './open-rows.ts';
import { isBeside, isNext, isWithin } from './paths.ts';
import type { Mark } from './read-line.ts';

export interface Nested {
  depth: number;
  /** The numbering or the headings jump over a level. */
  skipped: boolean;
  /** Lifted to the deepest level that is kept. */
  lifted: boolean;
}

interface Spot {
  depth: number;
  skipped?: boolean;
}

/**
 * The depth of each row, in order. Numbers say where they belong ("1.2.3" under "1.2"); lists, bullets and rows
 * without a mark go by the rows above them and by how far they are set in.
 */
export function nest(rows: readonly Nestable[]): Nested[] {
  const open: Open[] = [];
  return rows.map((row) => {
    const spot = spotOf(row, open);
    const depth = Math.min(spot.depth, DEEPEST);
    open.length = Math.min(depth, open.length);
    open.push({ ...row, depth, label: labelOf(row.mark) });
    return { depth, skipped: spot.skipped ?? false, lifted: spot.depth > DEEPEST };
  });
}

const labelOf = (mark: Mark): Label | null => ('label' in mark ? mark.label : null);

function spotOf(row: Nestable, open: readonly Open[]): Spot {
  if (row.mark.kind === 'heading') return spotOfHeading(row.mark.level, open);
  if (row.mark.kind === 'bullet') return { depth: depthOfBullet(row, row.mark.sign, open) };
  if (row.mark.kind === 'none') return { depth: depthUnder(row, open, holdsUnmarked) };
  const { label } = row.mark;
  if (label.word) return { depth: depthOfWorded(label.word, open) };
  if (!label.path) return spotOfList(row, label, open);
  return label.path.length === 1 ? spotOfNumber(row, label, open) : spotOfPath(row, label.path, open);
}

function spotOfHeading(level: number, open: readonly Open[]): Spot {
  const above = open.findLast(({ mark }) => mark.kind === 'heading' && mark.level <= level);
  if (!above || above.mark.kind !== 'heading') return { depth: 0 };
  if (above.mark.level === level) return { depth: above.depth };
  return { depth: above.depth + 1, skipped: level - above.mark.level > 1 };
}

function depthOfWorded(word: string, open: readonly Open[]): number {
  const same = open.findLast(({ label }) => label?.word === word);
  if (same) return same.depth;
  const above = open.findLast(
    (other) => isChapter(other) || (other.mark.kind === 'none' && other.depth === 0),
  );
  return above ? above.depth + 1 : 0;
}

function spotOfPath(row: Nestable, path: readonly string[], open: readonly Open[]): Spot {
  const before = open.findLast(({ label }) => !label?.word && label?.path && isNext(path, label.path));
  if (before) return { depth: before.depth };
  let apart: Open | undefined;
  for (const above of open.toReversed()) {
    const other = above.label?.path;
    if (other && isWithin(path, other))
      return { depth: above.depth + 1, skipped: path.length > other.length + 1 };
    if (isChapter(above)) return { depth: apart?.depth ?? above.depth + 1 };
    if (other && isBeside(path, other)) return { depth: above.depth };
    if (other) apart = above;
  }
  if (apart) return { depth: apart.depth, skipped: apart.label?.path?.length !== path.length };
  return { depth: depthUnder(row, open, holdsMarked) };
}

/** A number of one step: of the chapters, or of a list inside one that starts again at 1. */
function spotOfNumber(row: Nestable, label: Label, open: readonly Open[]): Spot {
  const before = openListOf(row, label.readings, open, 1);
  if (before) return { depth: before.depth };
  if (!label.readings.some(isFirst)) return spotOfPath(row, label.path ?? [], open);
  const repeated = openListOf(row, label.readings, open, 0);
  const isRepeated = repeated && isLevel(row, repeated) && !open.slice(repeated.depth + 1).some(hasPath);
  return { depth: isRepeated ? repeated.depth : depthUnder(row, open, holdsMarked) };
}

const hasPath = ({ label }: Open): boolean => Boolean(label?.path);
const isFirst = ({ value }: Reading): boolean => value === 1;

function spotOfList(row: Nestable, label: Label, open: readonly Open[]): Spot {
  const next = openListOf(row, label.readings, open, 1);
  if (next) return { depth: next.depth };
  const first = label.readings.filter(isFirst);
  const same = openListOf(row, first.length > 0 ? first : label.readings, open, null);
  const isInside = same && first.length > 0 && row.indent > same.indent + SLACK;
  return { depth: same && !isInside ? same.depth : depthUnder(row, open, holdsMarked) };
}

function depthOfBullet(row: Nestable, sign: string, open: readonly Open[]): number {
  const isSame = (above: Open): boolean => above.mark.kind === 'bullet' && above.mark.sign === sign;
  for (const [i, above] of [...open.entries()].reverse()) {
    const further = row.indent - above.indent;
    if (above.mark.kind === 'bullet') {
      if (isLevel(row, above) && isSame(above)) return above.depth;
      if (further > SLACK || (isLevel(row, above) && !open.slice(0, i).some(isSame))) return above.depth + 1;
    } else if (
      above.mark.kind === 'none' ? further >= 0 : further >= -SLACK || !open.slice(0, i).some(isBullet)
    ) {
      return above.depth + 1;
    }
  }
  return 0;
}

const isBullet = (above: Open): boolean => above.mark.kind === 'bullet';
