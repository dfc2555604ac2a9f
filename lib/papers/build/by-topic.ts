import type { PaperWish } from './offer.ts';
import { HUNDREDTHS } from './topic-marks.ts';
import type { Pool, Unit } from './units.ts';

/** Prices of a minute that are tried. */
const TRIES = 24;

/**
 * A first paper, quickly: topic by topic from units of that topic alone, each with exactly the marks that it should
 * have, of the highest value in all (a knapsack each, by dynamic programming). Where it takes too long, a price is put on
 * a minute and raised until it fits (Lagrangian relaxation). Such a paper is off by nothing; it need not be the best.
 * @param units places in the pool of those that may be chosen
 * @returns places in the pool; null where there is no such paper, or none is found
 */
export function paperByTopic(
  pool: Pool,
  units: readonly number[],
  wish: PaperWish,
  valueOf: (unit: Unit) => number,
): number[] | null {
  const pure = [...pool.targets].map(([topic, target]) => ({
    marks: target / HUNDREDTHS,
    units: withoutCopies(pool, units).filter((unit) => isOnlyOf(pool.units[unit]!, topic)),
  }));
  const at = (price: number): number[] | null => {
    const chosen = pure.map((topic) =>
      fullest(pool, topic.units, topic.marks, (unit) => valueOf(unit) - price * unit.minutes),
    );
    return chosen.includes(null) ? null : (chosen as number[][]).flat();
  };
  const fits = (chosen: number[]) =>
    wish.minutes === null ||
    chosen.reduce((sum, unit) => sum + pool.units[unit]!.minutes, 0) <= wish.minutes + 1e-6;
  const free = at(0);
  if (!free || fits(free)) return free;
  // Above the highest price no value is worth a thousandth of a minute.
  let [low, high] = [0, 1000 * Math.max(1, ...units.map((unit) => valueOf(pool.units[unit]!)))];
  let best = at(high)!;
  if (!fits(best)) return null;
  for (let tried = 0; tried < TRIES; tried++) {
    // Prices lie orders of magnitude apart at first.
    const price = low > 0 ? Math.sqrt(low * high) : high / 1000;
    const chosen = at(price)!;
    if (fits(chosen)) [best, high] = [chosen, price];
    else low = price;
  }
  return best;
}

const isOnlyOf = ({ topics }: Unit, topic: string) => topics.size === 1 && topics.has(topic);

/** Of each group of near copies only the first. */
function withoutCopies({ alike }: Pool, units: readonly number[]): number[] {
  const others = new Set(alike.flatMap((group) => group.slice(1)));
  return units.filter((unit) => !others.has(unit));
}

/** The units of exactly so many marks whose values add up to most; null where there are none. */
function fullest(
  pool: Pool,
  units: readonly number[],
  marks: number,
  valueOf: (unit: Unit) => number,
): number[] | null {
  const most = new Float64Array(marks + 1).fill(-Infinity);
  most[0] = 0;
  const taken = units.map((place) => {
    const unit = pool.units[place]!;
    const value = valueOf(unit);
    const taking = new Uint8Array(marks + 1);
    for (let sum = marks; sum >= unit.marks; sum--) {
      const sumWith = most[sum - unit.marks]! + value;
      if (sumWith > most[sum]!) [most[sum], taking[sum]] = [sumWith, 1];
    }
    return taking;
  });
  if (most[marks] === -Infinity) return null;
  const chosen: number[] = [];
  for (let [at, sum] = [units.length - 1, marks]; at >= 0; at--) {
    if (taken[at]![sum] !== 1) continue;
    chosen.push(units[at]!);
    sum -= pool.units[units[at]!]!.marks;
  }
  return chosen;
}
