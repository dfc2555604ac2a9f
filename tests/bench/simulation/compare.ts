import { AIMED } from './aimed.ts';
import { FIXED_GAPS, IN_SEQUENCE, LAST_TWO_DAYS, RANDOM_ORDER } from './fixed-orders.ts';
import type { Law } from './laws.ts';
import { type Policy, simulate } from './simulate.ts';

export const FIXED_ORDERS: readonly Policy[] = [RANDOM_ORDER, IN_SEQUENCE, FIXED_GAPS, LAST_TWO_DAYS];

/** A mean with half the width of its 95 % interval (normal, by the spread over the runs). */
export interface Mean {
  mean: number;
  within: number;
}

/** Shares of the exam's marks, 0 to 1, under one law. */
export interface Comparison {
  law: string;
  runs: number;
  policies: { name: string; marks: Mean; attempts: number }[];
  ours: Mean;
  /** The best of the fixed orders on the mean. */
  best: { name: string; marks: Mean };
  /** Ours less the best of the fixed orders, student by student. */
  ahead: Mean;
  /** The same as a part of the marks still missing under the best of the fixed orders. */
  ofMissing: Mean;
}

/**
 * Each student (seeds `firstSeed` and up) practises in every order, with the same luck in each.
 * @param even all items of equal weight
 * @param aimed what is held against the fixed orders
 */
export function comparison(
  law: Law,
  runs: number,
  firstSeed = 1,
  even = false,
  aimed: Policy = AIMED,
): Comparison {
  const seeds = Array.from({ length: runs }, (_, i) => firstSeed + i);
  const results = [...FIXED_ORDERS, aimed].map((policy) => {
    const outcomes = seeds.map((seed) => simulate(law, seed, policy, even));
    const marks = outcomes.map((outcome) => outcome.marks);
    const attempts = outcomes.reduce((sum, outcome) => sum + outcome.attempts, 0) / runs;
    return { name: policy.name, all: marks, marks: meanOf(marks), attempts };
  });
  const ours = results.pop()!;
  const best = results.reduce((a, b) => (b.marks.mean > a.marks.mean ? b : a));
  const ahead = meanOf(ours.all.map((marks, i) => marks - best.all[i]!));
  const missing = 1 - best.marks.mean;
  // The share of the missing marks is a ratio of means: its spread by the residuals (delta method).
  const part = ahead.mean / missing;
  const residuals = ours.all.map((marks, i) => (marks - best.all[i]! - part * (1 - best.all[i]!)) / missing);
  return {
    law: law.name,
    runs,
    policies: [...results, ours].map(({ name, marks, attempts }) => ({ name, marks, attempts })),
    ours: ours.marks,
    best: { name: best.name, marks: best.marks },
    ahead,
    ofMissing: { mean: part, within: meanOf(residuals).within },
  };
}

function meanOf(values: readonly number[]): Mean {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return { mean, within: 1.96 * Math.sqrt(squares / (values.length - 1) / values.length) };
}
