/** A block as it is laid into columns; lengths in any one unit. */
export interface MeasuredBlock {
  /** Space above it, which falls away at the top of a column. */
  gap: number;
  /** Heights of what may be parted between columns, such as the lines of a long text; one where it stays whole. */
  parts: readonly number[];
  /** It does not end a column while something follows: a heading. */
  keepsNext: boolean;
}

/** Parts `from` up to and without `to` of one block, standing in a column. */
export interface Placed {
  /** Which of the blocks. */
  block: number;
  from: number;
  to: number;
  /** Down from the top of the column. */
  top: number;
  height: number;
}

export type Column = Placed[];

/** The columns of a side, left to right; those behind the last block are empty. */
export type Side = Column[];

/** One part, with the space above it. */
interface Part {
  block: number;
  part: number;
  gap: number;
  height: number;
}

/**
 * Lays blocks into the columns of as many sides as they need, each as far up as it goes. A heading goes with what
 * follows it. Of a block of several parts neither the first nor the last stands alone. A run that has to stay together
 * and is taller than a column is parted as late as can be; a part that is taller than a column has one to itself.
 */
export function paginate(
  blocks: readonly MeasuredBlock[],
  frame: { columns: number; columnHeight: number },
): Side[] {
  const columns: Column[] = [];
  let filled = Infinity;
  for (const run of togetherIn(blocks))
    for (const group of fitting(run, frame.columnHeight)) {
      if (filled + heightOf(group, filled > 0) > frame.columnHeight) {
        columns.push([]);
        filled = 0;
      }
      for (const part of group) filled = place(columns.at(-1)!, part, filled);
    }
  const sides: Side[] = [];
  for (let from = 0; from < columns.length; from += frame.columns)
    sides.push(Array.from({ length: frame.columns }, (_, i) => columns[from + i] ?? []));
  return sides;
}

/** Puts a part below what fills a column, and gives how far it is filled then. */
function place(column: Column, { block, part, gap, height }: Part, filled: number): number {
  const top = filled > 0 ? filled + gap : 0;
  const last = column.at(-1);
  if (last?.block === block) {
    last.to = part + 1;
    last.height += height;
  } else column.push({ block, from: part, to: part + 1, top, height });
  return top + height;
}

/** Runs of parts that are not parted. */
function* togetherIn(blocks: readonly MeasuredBlock[]): Generator<Part[]> {
  let run: Part[] = [];
  for (const [block, { gap, parts, keepsNext }] of blocks.entries()) {
    for (const [part, height] of parts.entries()) {
      run.push({ block, part, gap: part === 0 ? gap : 0, height });
      const isLast = part === parts.length - 1;
      const keeps = isLast ? keepsNext : part === 0 || part === parts.length - 2;
      if (keeps) continue;
      yield run;
      run = [];
    }
  }
  if (run.length > 0) yield run;
}

/** A run in groups that fit a column: one, wherever that can be had; else the last is as large as can be. */
function fitting(run: Part[], height: number): Part[][] {
  const groups: Part[][] = [];
  let to = run.length;
  while (to > 0) {
    let from = to - 1;
    while (from > 0 && heightOf(run.slice(from - 1, to), false) <= height) from--;
    groups.unshift(run.slice(from, to));
    to = from;
  }
  return groups;
}

/** How tall parts are, one under another, below something or at the top of a column. */
function heightOf(parts: readonly Part[], isBelow: boolean): number {
  return parts.reduce((sum, { gap, height }, i) => sum + height + (i > 0 || isBelow ? gap : 0), 0);
}

/** What part of a side each topic takes: the heights of its blocks by the height of all columns of a side. */
export function sidesByTopic(
  blocks: readonly (MeasuredBlock & { topicId: string })[],
  frame: { columns: number; columnHeight: number },
): Map<string, number> {
  const shares = new Map<string, number>();
  for (const { topicId, gap, parts } of blocks) {
    const height = parts.reduce((sum, part) => sum + part, gap);
    shares.set(topicId, (shares.get(topicId) ?? 0) + height / frame.columnHeight / frame.columns);
  }
  return shares;
}
