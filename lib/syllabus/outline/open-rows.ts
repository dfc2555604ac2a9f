import type { Label, Reading } from './label.ts';
import type { Mark } from './read-line.ts';

/** What nesting goes by. */
export interface Nestable {
  indent: number;
  mark: Mark;
}

/** A row that others may still stand under. */
export interface Open extends Nestable {
  depth: number;
  label: Label | null;
}

/** Indents that differ by no more than this are one level. */
export const SLACK = 1;

/** The open row of the same list, some steps before or (null) anywhere in it: the one set in most alike. */
export function openListOf(
  row: Nestable,
  readings: readonly Reading[],
  open: readonly Open[],
  steps: number | null,
): Open | undefined {
  const isSame = (above: Open): boolean =>
    readings.some(({ family, value }) =>
      above.label?.readings.some((r) => r.family === family && (steps === null || value === r.value + steps)),
    );
  const away = (above: Open): number => Math.abs(above.indent - row.indent);
  return open.reduce<Open | undefined>(
    (best, above) => (!isSame(above) || (best && away(best) < away(above)) ? best : above),
    undefined,
  );
}

export const isLevel = (a: Nestable, b: Nestable): boolean => Math.abs(a.indent - b.indent) <= SLACK;

/** "Unit 2" and headings hold all that comes before the next of their kind. */
export const isChapter = ({ mark, label }: Open): boolean => mark.kind === 'heading' || Boolean(label?.word);

/** One deeper than the nearest open row that holds the row; 0 where none does. */
export function depthUnder(
  row: Nestable,
  open: readonly Open[],
  holds: (above: Open, row: Nestable, i: number, open: readonly Open[]) => boolean,
): number {
  const above = open.findLast((other, i) => isChapter(other) || holds(other, row, i, open));
  return above ? above.depth + 1 : 0;
}

export function holdsMarked(above: Open, row: Nestable, i: number, open: readonly Open[]): boolean {
  if (row.indent >= above.indent) return true;
  if (above.mark.kind !== 'label') return false;
  return row.indent >= above.indent - SLACK || !open.slice(0, i).some((other) => other.indent <= row.indent);
}

export function holdsUnmarked(above: Open, row: Nestable): boolean {
  return row.indent > above.indent + (above.mark.kind === 'none' ? 0 : SLACK);
}
