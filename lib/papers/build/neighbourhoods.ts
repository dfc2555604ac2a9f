import { type Found, isBeaten, type Search, searched } from './branch.ts';
import type { Model } from './model.ts';

/** How many goals' columns are chosen anew at a time, one after the other; nodes for each try; tries in vain. Our choice. */
const SIZES = [3, 4, 5, 6, 8];
const NODES = 100;
const IN_VAIN = 24;

/**
 * Betters choices, without a proof (large neighbourhood search: Shaw 1998, CP98, 417-431): what belongs to a few goals
 * only is chosen anew while all else stays, over and over with other goals.
 * @param floor no choices cost less
 */
export function* bettered(model: Model, start: Found, floor: number): Search {
  const found = { ...start };
  const goals = model.rows.flatMap(({ goal }, row) => (goal ? [row] : []));
  const columnGoals = model.columns.map(({ entries }) =>
    entries.filter(([row]) => model.rows[row]!.goal).map(([row]) => row),
  );
  const draw = drawing();
  for (let [size, inVain] = [0, 0]; size < SIZES.length && SIZES[size]! < goals.length;) {
    if (isBeaten(model, floor, found.cost)) break;
    const open = new Set<number>();
    while (open.size < SIZES[size]!) open.add(goals[Math.floor(draw() * goals.length)]!);
    const fixed = Int8Array.from(columnGoals, (of, column) =>
      of.every((row) => open.has(row)) ? -1 : found.choices![column]!,
    );
    const tried = yield* searched(model, { fixed, floor, best: found, nodes: NODES });
    if (tried.status === 'cancelled') return tried;
    if (tried.cost < found.cost) {
      Object.assign(found, tried);
      [size, inVain] = [0, 0];
    } else if (++inVain === IN_VAIN) [size, inVain] = [size + 1, 0];
  }
  return found;
}

/** Numbers from 0 to 1, the same each time, by the generator of Numerical Recipes; any other would do. */
function drawing(): () => number {
  let state = 1;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}
