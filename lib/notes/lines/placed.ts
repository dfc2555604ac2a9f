import type { Line } from '#lib/model/item.ts';
import { type Move, atShownDepths } from './outline.ts';

/** One action in the outline. */
export interface Outlined {
  change?: readonly (Pick<Line, 'id'> & Partial<Line>)[];
  moves?: readonly Move[];
  add?: readonly Line[];
  remove?: readonly string[];
}

/** The lines after an action, in their order. Those that stay as they are stay the same objects. */
export function placed(
  lines: readonly Line[],
  { change = [], moves = [], add = [], remove = [] }: Outlined,
): Line[] {
  const changed = lines
    .filter(({ id }) => !remove.includes(id))
    .map((line) => {
      const all = [...change, ...moves].filter(({ id }) => id === line.id);
      return all.length > 0 ? Object.assign({}, line, ...all) : line;
    });
  return atShownDepths([...changed, ...add].sort((a, b) => a.order - b.order));
}
