import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Random } from '#tests/bench/random.ts';
import { canBeTurned, inDirection, turned } from '#lib/recall/directions.ts';
import { itemOf } from './builders.ts';

const randomOf = (seed: number) => {
  const random = new Random(seed);
  return () => random.next();
};

describe('the order of a round', () => {
  it('is as in the notes, or back to front', () => {
    expect(inDirection([1, 2, 3], 'forward', () => 0)).toEqual([1, 2, 3]);
    expect(inDirection([1, 2, 3], 'backToFront', () => 0)).toEqual([3, 2, 1]);
    expect(inDirection([], 'outOfOrder', () => 0)).toEqual([]);
  });

  it('out of order has all items and none after the one it follows in the notes', () => {
    fc.assert(
      fc.property(fc.integer({ min: 4, max: 60 }), fc.nat(), (count, seed) => {
        const items = Array.from({ length: count }, (_, i) => i);
        const order = inDirection(items, 'outOfOrder', randomOf(seed));
        expect(order.toSorted((a, b) => a - b)).toEqual(items);
        expect(order.every((item, i) => i === 0 || item !== order[i - 1]! + 1)).toBe(true);
      }),
    );
  });

  it('out of order is not always the same', () => {
    const orders = [1, 2, 3, 4, 5].map((seed) =>
      inDirection([1, 2, 3, 4, 5], 'outOfOrder', randomOf(seed)).join(),
    );
    expect(new Set(orders).size).toBeGreaterThan(2);
  });

  it('does what can be done for two', () => {
    expect(inDirection([1, 2], 'outOfOrder', randomOf(1))).toEqual([2, 1]);
  });
});

describe('asked from the answer', () => {
  it('shows what was covered and covers what was shown', () => {
    const item = itemOf(1);
    expect(turned(item)).toEqual({ ...item, asks: item.covers, covers: item.asks });
    expect(turned(turned(item))).toEqual(item);
  });

  it.each([
    ['The Coriolis parameter', true],
    ['9.81', false],
    ['Yes, always', false],
    ['x', false],
    ['A long answer that tells much. '.repeat(5), false],
  ])('%s: %s', (covers, can) => expect(canBeTurned({ covers })).toBe(can));
});
