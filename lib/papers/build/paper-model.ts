import type { Column, Model, Row } from './model.ts';
import type { PaperWish } from './offer.ts';
import { HUNDREDTHS } from './topic-marks.ts';
import type { Pool, Unit } from './units.ts';

/** What a model of a paper is to be good at. */
export interface Aim {
  /** Cost of a unit. */
  costOf: (unit: Unit) => number;
  /** Every cost is a multiple of it. */
  step: number;
  /** Cost of each mark by which topics are off, and how many they may be off in all. */
  goals: Model['goals'];
  /** The goals are the topics' marks, or only the marks of the paper, or there are none. */
  goal: 'topics' | 'marks' | null;
}

/**
 * The model of a paper: marks within the tolerance, minutes, and one of each group of near copies are rows.
 * @param units places in the pool of those that may be chosen; the model's columns in the same order
 */
export function modelOf(pool: Pool, units: readonly number[], wish: PaperWish, aim: Aim): Model {
  const rows: Row[] = [];
  const columns: Column[] = units.map((unit) => ({ cost: aim.costOf(pool.units[unit]!), entries: [] }));
  const column = new Map(units.map((unit, at) => [unit, columns[at]!]));
  const addRow = (row: Row, of: Iterable<number>, coefficient: (unit: Unit) => number) => {
    rows.push(row);
    for (const unit of of) {
      const by = coefficient(pool.units[unit]!);
      if (by !== 0) column.get(unit)?.entries.push([rows.length - 1, by]);
    }
  };
  for (const row of marksRows(wish, aim)) addRow(row, units, ({ marks }) => marks);
  if (wish.minutes !== null)
    addRow({ min: -Infinity, max: wish.minutes, goal: false }, units, ({ minutes }) => minutes);
  if (aim.goal === 'topics') {
    for (const topic of topicsOf(pool, units)) {
      const target = (pool.targets.get(topic) ?? 0) / HUNDREDTHS;
      const row = { min: target, max: target, goal: true };
      addRow(row, units, ({ topics }) => (topics.get(topic) ?? 0) / HUNDREDTHS);
    }
  }
  for (const group of pool.alike) {
    const left = group.filter((unit) => column.has(unit));
    if (left.length > 1) addRow({ min: -Infinity, max: 1, goal: false }, left, () => 1);
  }
  return { columns, rows, step: aim.step, goals: aim.goals };
}

/** A paper without marks is none. */
function marksRows({ marks, marksTolerance }: PaperWish, { goal }: Aim): Row[] {
  const least = Math.max(marks - marksTolerance, 1);
  if (goal !== 'marks') return [{ min: least, max: marks + marksTolerance, goal: false }];
  return [
    { min: marks, max: marks, goal: true },
    { min: 1, max: Infinity, goal: false },
  ];
}

/** Those that a share was wished for, then others that parts have. */
function topicsOf(pool: Pool, units: readonly number[]): Set<string> {
  return new Set([...pool.targets.keys(), ...units.flatMap((unit) => [...pool.units[unit]!.topics.keys()])]);
}

/** The greatest measure, in marks, of which every deviation by topic is a multiple. */
export function deviationStep(pool: Pool, units: readonly number[], wish: PaperWish): number {
  let step = 0;
  const take = (hundredths: number) => {
    for (let [a, b] = [hundredths, step]; ; [a, b] = [b, a % b]) if (b === 0) return void (step = a);
  };
  for (const target of pool.targets.values()) take(target);
  for (const unit of units) for (const marks of pool.units[unit]!.topics.values()) take(marks);
  // With exactly the marks that the targets add up to, topics are above by as much as others are below: twice a multiple.
  const wished = [...pool.targets.values()].reduce((sum, each) => sum + each, 0);
  const even = wish.marksTolerance === 0 && wished === wish.marks * HUNDREDTHS;
  return ((even ? 2 : 1) * Math.max(step, 1)) / HUNDREDTHS;
}
