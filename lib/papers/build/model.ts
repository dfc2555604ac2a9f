/**
 * A linear model in whole numbers: choose columns so that every row lies in its limits, at the least cost. The rows that
 * are goals need not be met: what they are off adds to the cost.
 */
export interface Model {
  columns: Column[];
  rows: Row[];
  goals: Goals;
  /** Everything that choices may cost is a multiple of it. */
  step: number;
}

/** Is chosen or not. */
export interface Column {
  cost: number;
  /** Row and coefficient, each row at most once. */
  entries: [number, number][];
}

export interface Row {
  min: number;
  max: number;
  /** `min` and `max` are the same and to be met as well as possible. */
  goal: boolean;
}

/** How goals that are not met count. */
export interface Goals {
  /** Cost of each mark off. */
  cost: number;
  /** How far all goals together may be off. */
  atMost: number;
}

/** Sums of decimal fractions are exact to this. */
const EXACT = 1e-6;

/** What choices cost; Infinity where they break a row. Worked out apart from any relaxation. */
export function costOf({ columns, rows, goals }: Model, choices: Int8Array): number {
  const sums = new Float64Array(rows.length);
  let cost = 0;
  columns.forEach((column, at) => {
    if (choices[at] !== 1) return;
    cost += column.cost;
    for (const [row, by] of column.entries) sums[row]! += by;
  });
  let off = 0;
  for (const [at, { min, max, goal }] of rows.entries()) {
    if (goal) off += Math.abs(sums[at]! - min);
    else if (sums[at]! < min - EXACT || sums[at]! > max + EXACT) return Infinity;
  }
  return off > goals.atMost + EXACT ? Infinity : cost + goals.cost * off;
}
