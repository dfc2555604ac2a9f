import { type Coefficients, type Constraint, solve } from 'yalps';
import type { Model } from './model.ts';

/** A bound on the cost, and what it costs at least to choose against it. */
export interface Priced {
  /** No choices cost less. */
  bound: number;
  /** What each column costs, less what it is worth to the rows. */
  reduced: Float64Array;
}

const WORTH = -1;

/**
 * Prices of the rows, from the dual of the relaxation (solved by the npm package yalps), and the Lagrangian bound that
 * they give. The bound is worked out from the prices here, and holds for any prices at all (Geoffrion 1974, Mathematical
 * Programming Study 2, 82-114), so no rounding in the solver can make it wrong by more than that of a sum.
 *
 * With x from 0 to 1 and prices y, the cost is at least the sum of y over the limits, plus the negative reduced costs.
 * Whoever chooses a column of positive reduced cost, or leaves one of negative, pays as much on top.
 */
export function pricesOf(model: Model): Priced {
  const { rows, goals } = model;
  const prices = dualPrices(model);
  const dearest = rows.reduce(
    (most, { goal }, row) => (goal ? Math.max(most, Math.abs(prices[row]!)) : most),
    0,
  );
  // A goal may be off at its cost, so no price of one may be above that and what the limit on all of them is worth.
  const limit = Math.max(0, dearest - goals.cost);
  let bound = limit > 0 ? -limit * goals.atMost : 0;
  rows.forEach(({ min, max }, row) => {
    const price = prices[row]!;
    if (price !== 0) bound += price * (price > 0 ? min : max);
  });
  const reduced = Float64Array.from(model.columns, ({ cost, entries }) =>
    entries.reduce((left, [row, by]) => left - prices[row]! * by, cost),
  );
  for (const each of reduced) bound += Math.min(0, each);
  return { bound, reduced };
}

/** Prices that make the bound as high as they can; none where the solver finds none. */
function dualPrices({ columns, rows, goals }: Model): Float64Array {
  const limited = goals.atMost < Infinity;
  const variables: [number, [number, number][]][] = [];
  const byRow = rows.map((): [number, number][] => []);
  columns.forEach(({ entries }, column) => {
    for (const [row, by] of entries) byRow[row]!.push([column, by]);
  });
  const constraints: [number, Constraint][] = columns.map(({ cost }, column) => [column, { max: cost }]);
  rows.forEach(({ min, max, goal }, row) => {
    const [up, down] = [columns.length + 2 * row, columns.length + 2 * row + 1];
    if (goal) constraints.push([up, { max: goals.cost }], [down, { max: goals.cost }]);
    const both: [number, number][] = goal && goals.atMost > 0 ? [[up, 1]] : [];
    const other: [number, number][] = goal && goals.atMost > 0 ? [[down, 1]] : [];
    if (min > -Infinity) variables.push([up, [[WORTH, min], ...byRow[row]!, ...both]]);
    if (max < Infinity)
      variables.push([
        down,
        [[WORTH, -max], ...byRow[row]!.map(([at, by]): [number, number] => [at, -by]), ...other],
      ]);
  });
  const priceOf = new Set(variables.map(([name]) => name));
  if (limited && goals.atMost > 0) {
    const off = rows.flatMap(({ goal }, row): [number, number][] =>
      goal
        ? [
            [columns.length + 2 * row, -1],
            [columns.length + 2 * row + 1, -1],
          ]
        : [],
    );
    variables.push([-2, [[WORTH, -goals.atMost], ...off]]);
  }
  // What a column is worth beyond its cost: the price of its being at most 1.
  columns.forEach((_, column) =>
    variables.push([
      -3 - column,
      [
        [WORTH, -1],
        [column, -1],
      ],
    ]),
  );
  const solution = solve(
    {
      direction: 'maximize',
      objective: WORTH,
      constraints,
      variables: variables as [number, Coefficients<number>][],
    },
    { maxPivots: 20_000 },
  );
  const prices = new Float64Array(rows.length);
  if (solution.status !== 'optimal') return prices;
  for (const [name, value] of solution.variables) {
    if (!priceOf.has(name)) continue;
    const at = name - columns.length;
    prices[at >> 1]! += at % 2 === 0 ? value : -value;
  }
  return prices;
}
