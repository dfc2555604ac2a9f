import { type Found, isBeaten, type Search, searched } from './branch.ts';
import type { Model } from './model.ts';

/** Goals whose columns are chosen anew at a time, nodes for each try, and tries in vain before it ends. Our choice. */
const GOALS = 4;
const NODES = 40;
const IN_VAIN = 24;

/**
 * Betters choices, without a proof (large neighbourhood search: Shaw 1998, CP98, 417-431): what belongs to a few goals
 * only is chosen anew while all else stays, over and over with other goals.
 * @param floor no choices cost less
 */
export function* bettered(model: Model, start: Found, floor: number): Search {
  const found = { ...start };
  const goals = model.rows.flatMap(({ goal }, row) => (goal ? [row] : []));
  if (goals.length <= GOALS) return found;
  const columnGoals = model.columns.map(({ entries }) =>
    entries.filter(([row]) => model.rows[row]!.goal).map(([row]) => row),
  );
  let state = 1;
  for (let inVain = 0; inVain < IN_VAIN && !isBeaten(model, floor, found.cost); inVain++) {
    const open = new Set<number>();
    while (open.size < GOALS) {
      // Numerical Recipes' generator; any that is the same each time would do.
      state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
      open.add(goals[Math.floor((state / 2 ** 32) * goals.length)]!);
    }
    const fixed = Int8Array.from(columnGoals, (of, column) =>
      of.every((row) => open.has(row)) ? -1 : found.choices![column]!,
    );
    const tried = yield* searched(model, { fixed, floor, best: found, nodes: NODES });
    if (tried.status === 'cancelled') return tried;
    if (tried.cost < found.cost) {
      Object.assign(found, tried);
      inVain = -1;
    }
  }
  return found;
}
