import { type Found, isBeaten, raised, type Search, searched } from './branch.ts';
import { costOf, type Model } from './model.ts';
import { bettered } from './neighbourhoods.ts';
import { pricesOf } from './prices.ts';

/** Columns that the first search may choose among, and nodes that it may look at while there are others. Our choice. */
const FIRST = 60;
const NODES = 150;

/**
 * The least cost, with a proof, found in a core (Balas and Zemel 1980, Operations Research 28, 1130-1154): only the
 * columns are searched whose reduced costs are nearest to nothing; all others stay as their reduced costs tell. Choosing
 * otherwise for one of these costs at least the bound and its reduced cost. Where that is no better than the best found
 * in the core, the best is the best of all. Else the core grows, in the end to all columns.
 * @param start choices to be beaten; must keep to the rows
 * @param unlikely which of equal columns rather to leave out of the core: the higher, the later
 */
export function* searchedInCore(
  model: Model,
  unlikely: (column: number) => number,
  start: Int8Array | null = null,
): Search {
  const { reduced, bound } = pricesOf(model);
  const floor = raised(model, bound);
  let found: Found = { status: 'proven', choices: start, cost: start ? costOf(model, start) : Infinity };
  if (start) found = { ...(yield* bettered(model, found, floor)) };
  if (found.status === 'cancelled') return found;
  found.status = 'proven';
  const order = [...reduced.keys()].sort(
    (a, b) => Math.abs(reduced[a]!) - Math.abs(reduced[b]!) || unlikely(a) - unlikely(b),
  );
  const needed = () => {
    const beaten = order.findIndex((column) =>
      isBeaten(model, raised(model, bound + Math.abs(reduced[column]!)), found.cost),
    );
    return beaten === -1 ? order.length : beaten;
  };
  for (let size = FIRST; ; size *= 2) {
    if (isBeaten(model, floor, found.cost)) return found;
    const all = needed();
    const fixed = Int8Array.from(reduced, (each) => (each < 0 ? 1 : 0));
    for (const column of order.slice(0, Math.min(size, all))) fixed[column] = -1;
    const searching = searched(model, { fixed, floor, best: found, nodes: size < all ? NODES : Infinity });
    const inCore = yield* searching;
    if (inCore.cost < found.cost) Object.assign(found, inCore, { status: 'proven' });
    if (inCore.status === 'cancelled') return { ...found, status: 'cancelled' };
    if (inCore.status === 'proven' && Math.min(size, all) >= needed()) return found;
  }
}
