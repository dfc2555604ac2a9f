import type { JoinedLine } from './join-lines.ts';
import type { Nested } from './nesting.ts';

/**
 * Whether the first row is plainly the title of the whole: unnumbered, or a Markdown heading of the first level, and
 * alone at the top, with two rows or more below it that are numbered, set in, or anything at all below a heading.
 */
export function opensWithTitle(rows: readonly JoinedLine[], nested: readonly Nested[]): boolean {
  const [first, ...others] = rows;
  if (!first || others.length < 2 || nested.slice(1).some(({ depth }) => depth === 0)) return false;
  const { mark } = first;
  if (mark.kind === 'heading') return mark.level === 1 && !mark.label;
  return (
    mark.kind === 'none' &&
    others.every(
      (row) => row.mark.kind === 'label' || row.mark.kind === 'heading' || row.indent > first.indent,
    )
  );
}

/** A front page has at most this many lines: course, school, year, term. */
const FRONT_LINES = 4;

/**
 * How many rows at the top are a front page: unnumbered and not set in, above a text that is numbered throughout.
 * The first of them names the course. 0 where there is none, or a title alone (see opensWithTitle).
 */
export function frontPageLength(rows: readonly JoinedLine[]): number {
  const first = rows.findIndex(({ mark }) => mark.kind === 'label');
  if (first < 2 || first > FRONT_LINES || rows.length < first + 2) return 0;
  const front = rows.slice(0, first);
  const isPlain = front.every(({ mark, indent }) => mark.kind === 'none' && indent <= rows[first]!.indent);
  const isNumbered = rows
    .slice(first)
    .every(({ mark, indent }) => mark.kind === 'label' || indent > rows[first]!.indent);
  return isPlain && isNumbered ? first : 0;
}
