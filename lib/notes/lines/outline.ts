import { DEEPEST_LINE, type Line } from '#lib/model/item.ts';

/** What the outline needs of a line. */
export type Placed = Pick<Line, 'id' | 'order' | 'depth'>;

/** A new place of a line. */
export type Move = Pick<Line, 'id'> & Partial<Pick<Line, 'order' | 'depth'>>;

/*
 * The moves of the outline. All take the lines of one topic in their order, at the depths that are shown, and give the
 * lines that change, with their new places; none where the move is not possible. A line takes those that are moved in
 * below it along.
 */

/** Where the lines below a line end, in the list: the place of the first that is not moved in below it. */
export function endBelow(lines: readonly Placed[], at: number): number {
  const { depth } = lines[at]!;
  let end = at + 1;
  while (end < lines.length && lines[end]!.depth > depth) end++;
  return end;
}

/** Moves a line in below the one before it. */
export function movedIn(lines: readonly Placed[], id: string): Move[] {
  const at = lines.findIndex((line) => line.id === id);
  const [line, before] = [lines[at], lines[at - 1]];
  if (!line || !before || line.depth > before.depth) return [];
  const below = lines.slice(at, endBelow(lines, at));
  if (below.some(({ depth }) => depth >= DEEPEST_LINE)) return [];
  return below.map(({ id, depth }) => ({ id, depth: depth + 1 }));
}

/** Moves a line out by one. */
export function movedOut(lines: readonly Placed[], id: string): Move[] {
  const at = lines.findIndex((line) => line.id === id);
  const line = lines[at];
  if (!line || line.depth === 0) return [];
  return lines.slice(at, endBelow(lines, at)).map(({ id, depth }) => ({ id, depth: depth - 1 }));
}

/**
 * Moves a line up past the one that stands at its depth before it, or down past the one after it. It never leaves the
 * line that it is moved in below.
 */
export function movedPast(lines: readonly Placed[], id: string, way: 'up' | 'down'): Move[] {
  const at = lines.findIndex((line) => line.id === id);
  if (at < 0) return [];
  const start = way === 'up' ? siblingBefore(lines, at) : at;
  const middle = way === 'up' ? at : endBelow(lines, at);
  if (start === null || middle >= lines.length || lines[middle]!.depth !== lines[start]!.depth) return [];
  const end = endBelow(lines, middle);
  const block = [...lines.slice(middle, end), ...lines.slice(start, middle)];
  // They share the places that they had.
  return block.flatMap((line, i) => {
    const { order } = lines[start + i]!;
    return line.order === order ? [] : [{ id: line.id, order }];
  });
}

function siblingBefore(lines: readonly Placed[], at: number): number | null {
  const { depth } = lines[at]!;
  for (let i = at - 1; i >= 0; i--) {
    if (lines[i]!.depth === depth) return i;
    if (lines[i]!.depth < depth) return null;
  }
  return null;
}

/** Places nearer to each other than this are taken anew, before halves run out of digits. */
const NEAREST = 1e-6;

/**
 * The place of a new line after a place in the list (-1: before all), and the new places of others where there was no
 * room left between them.
 * @param lines of the topic
 */
export function placeAfter(lines: readonly Placed[], at: number): { order: number; moves: Move[] } {
  const before = lines[at]?.order;
  const after = lines[at + 1]?.order;
  if (before === undefined) return { order: after === undefined ? 0 : after - 1, moves: [] };
  if (after === undefined) return { order: before + 1, moves: [] };
  if (after - before > NEAREST) return { order: (before + after) / 2, moves: [] };
  const moves = lines.slice(at + 1).map(({ id }, i) => ({ id, order: before + 2 + i }));
  return { order: before + 1, moves };
}

/**
 * Lines at the depths that can be shown: no line stands more than one step further in than the one before it, and the first at
 * the margin. Lines before may have been deleted, left out or moved to another topic.
 */
export function atShownDepths<T extends Pick<Line, 'depth'>>(lines: readonly T[]): T[] {
  let before = -1;
  return lines.map((line) => {
    const depth = (before = Math.min(line.depth, before + 1));
    return depth === line.depth ? line : { ...line, depth };
  });
}
