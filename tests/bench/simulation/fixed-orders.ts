import type { Random } from '../random.ts';
import type { Order, Policy } from './simulate.ts';
import { DAY_MS, DAYS, SESSION_SECONDS, type Student } from './student.ts';

/** All items shuffled, then all shuffled again, and so on. */
export const RANDOM_ORDER: Policy = {
  name: 'random order',
  order({ items }, random) {
    let left: number[] = [];
    return {
      next() {
        if (left.length === 0) left = shuffled(items.length, random);
        return left.pop() ?? null;
      },
    };
  },
};

/** The first item to the last, over and over. */
export const IN_SEQUENCE: Policy = { name: 'in sequence', order: sequence };

/** In sequence, over and over, in two long sessions on the last two days that take as much time in all. */
export const LAST_TWO_DAYS: Policy = {
  name: 'last two days',
  order: sequence,
  sessions: [DAYS - 2, DAYS - 1].map((day) => ({ day, seconds: (DAYS / 2) * SESSION_SECONDS })),
};

function sequence({ items }: Student): Order {
  let next = 0;
  return { next: () => next++ % items.length };
}

const GAPS = [1, 3, 7];

/**
 * Each item again 1, 3 and 7 days after it was last asked, then every 7 days; the longest overdue first, then new ones
 * in sequence. Time that is left goes to those not asked for longest, so that all policies practise equally long.
 */
export const FIXED_GAPS: Policy = {
  name: 'gaps of 1, 3 and 7 days',
  order({ items }) {
    const asked = items.map(() => 0);
    const last = items.map(() => -Infinity);
    const due = items.map(() => Infinity);
    let day = -1;
    return {
      begins(at) {
        day = Math.floor(at / DAY_MS);
      },
      next() {
        const all = items.map((_, i) => i);
        const overdue = all.filter((i) => due[i]! <= day).sort((a, b) => due[a]! - due[b]! || a - b);
        const unseen = all.find((i) => asked[i] === 0);
        return overdue[0] ?? unseen ?? all.reduce((best, i) => (last[i]! < last[best]! ? i : best));
      },
      went(item, at) {
        // Practice in time left over leaves the day on which the item is due as it was.
        if (asked[item] === 0 || due[item]! <= day)
          due[item] = day + GAPS[Math.min(asked[item]!++, GAPS.length - 1)]!;
        last[item] = at;
      },
    };
  },
};

function shuffled(count: number, random: Random): number[] {
  const all = Array.from({ length: count }, (_, i) => i);
  for (let i = count - 1; i > 0; i--) {
    const other = random.below(i + 1);
    [all[i], all[other]] = [all[other]!, all[i]!];
  }
  return all;
}
