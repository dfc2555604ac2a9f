import { type Coefficients, type Constraint, solve } from 'yalps';
import type { Model } from './model.ts';

/** What the linear relaxation says of a node. */
export type Relaxed =
  | { status: 'infeasible' }
  /** The solver gave up: nothing is known of this node. */
  | { status: 'unknown' }
  /** No choices cost less than `bound`; `values` has from 0 to 1 of each column. */
  | { status: 'solved'; bound: number; values: Float64Array };

/** By more than this a value counts as above 1. */
const ABOVE = 1e-7;
const COST = -1;
const OFF = -2;

/**
 * The linear relaxation of a model whose choices may partly be fixed, solved by the npm package yalps.
 *
 * The library keeps a dense table with a row for every upper bound. Few bounds ever bind, so they are added only where a
 * solution breaks them, and are then kept for later nodes. A relaxation that lacks some bounds is still a relaxation.
 */
export class Relaxation {
  readonly #model: Model;
  readonly #bounded = new Set<number>();

  constructor(model: Model) {
    this.#model = model;
  }

  /** @param fixed 0 or 1 for each column that is fixed, -1 for one that is free */
  solve(fixed: Int8Array): Relaxed {
    for (;;) {
      const relaxed = this.#once(fixed);
      if (relaxed.status !== 'solved') return relaxed;
      const before = this.#bounded.size;
      relaxed.values.forEach((value, column) => {
        if (value > 1 + ABOVE) this.#bounded.add(column);
      });
      if (this.#bounded.size === before) return relaxed;
    }
  }

  #once(fixed: Int8Array): Relaxed {
    const { columns, rows } = this.#model;
    let constant = 0;
    const taken = new Float64Array(rows.length);
    const variables: [number, Coefficients<number>][] = [];
    const bounds: [number, Constraint][] = [];
    columns.forEach(({ cost, entries }, column) => {
      if (fixed[column] === 1) {
        constant += cost;
        for (const [row, by] of entries) taken[row]! += by;
      }
      if (fixed[column] !== -1) return;
      const coefficients: [number, number][] = [[COST, cost], ...entries];
      if (this.#bounded.has(column)) {
        coefficients.push([rows.length + column, 1]);
        bounds.push([rows.length + column, { max: 1 }]);
      }
      variables.push([column, coefficients]);
    });
    const solution = solve(
      {
        direction: 'minimize',
        objective: COST,
        constraints: [...this.#limits(taken), ...bounds],
        variables: [...variables, ...this.#measures()],
      },
      { maxPivots: 20_000 },
    );
    if (solution.status === 'infeasible') return { status: 'infeasible' };
    if (solution.status !== 'optimal') return { status: 'unknown' };
    const values = Float64Array.from(fixed, (value) => Math.max(value, 0));
    for (const [column, value] of solution.variables) if (column < values.length) values[column] = value;
    return { status: 'solved', bound: solution.result + constant, values };
  }

  /** The rows' limits, less what fixed choices take of them. */
  #limits(taken: Float64Array): [number, Constraint][] {
    const { rows, goals } = this.#model;
    const limits = rows.map(({ min, max }, row): [number, Constraint] => {
      const [low, high] = [min - taken[row]!, max - taken[row]!];
      if (min === max) return [row, { equal: low }];
      return [row, { ...(min > -Infinity ? { min: low } : {}), ...(max < Infinity ? { max: high } : {}) }];
    });
    if (this.#goalsMayBeOff() && goals.atMost < Infinity) limits.push([OFF, { max: goals.atMost }]);
    return limits;
  }

  #goalsMayBeOff(): boolean {
    return this.#model.goals.atMost > 0;
  }

  /** For each goal, how far choices are above it and how far below. */
  #measures(): [number, Coefficients<number>][] {
    const { columns, rows, goals } = this.#model;
    if (!this.#goalsMayBeOff()) return [];
    return rows.flatMap(({ goal }, row): [number, Coefficients<number>][] => {
      if (!goal) return [];
      const measure = (place: number, sign: number): [number, Coefficients<number>] => [
        columns.length + 2 * row + place,
        [
          [COST, goals.cost],
          [OFF, 1],
          [row, sign],
        ],
      ];
      return [measure(0, -1), measure(1, 1)];
    });
  }
}
