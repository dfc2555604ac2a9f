import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { intervalOfSum, wilson } from '#lib/syllabus/interval.ts';

describe('Wilson’s interval', () => {
  // Newcombe (1998), Statistics in Medicine 17, 857-872, table I, method 3, at 95 %.
  it.each([
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [0, 20, 0, 0.1611],
    [1, 29, 0.0061, 0.1718],
  ])('of %i of %i', (successes, tried, low, high) => {
    const found = wilson(successes, tried);
    expect(found.low).toBeCloseTo(low, 4);
    expect(found.high).toBeCloseTo(high, 4);
  });

  it('says nothing of nothing', () => {
    expect(wilson(0, 0)).toEqual({ low: 0, high: 1 });
  });

  test('holds the proportion, within 0 and 1, and is narrower the more was tried', () => {
    fc.assert(
      fc.property(fc.nat(200), fc.nat(200), (got, missed) => {
        fc.pre(got + missed > 0);
        const p = got / (got + missed);
        const { low, high } = wilson(got, got + missed);
        expect(low).toBeGreaterThanOrEqual(0);
        expect(high).toBeLessThanOrEqual(1);
        expect(low).toBeLessThanOrEqual(p + 1e-12);
        expect(high).toBeGreaterThanOrEqual(p - 1e-12);
        const ten = wilson(10 * got, 10 * (got + missed));
        expect(ten.high - ten.low).toBeLessThan(high - low);
      }),
    );
  });
});

describe('the interval of a sum', () => {
  const of = (weight: number, got: number, tried: number) => ({
    weight,
    estimate: got / tried,
    ...wilson(got, tried),
  });

  // Newcombe (1998), Statistics in Medicine 17, 873-890, table II, method 10: 56/70 less 48/80. From memory.
  it('of a difference is Newcombe’s', () => {
    const { estimate, low, high } = intervalOfSum([of(1, 56, 70), of(-1, 48, 80)]);
    expect(estimate).toBeCloseTo(0.2, 10);
    expect(low).toBeCloseTo(0.0524, 4);
    expect(high).toBeCloseTo(0.3339, 4);
  });

  it('of one part is that of the part', () => {
    const [part] = [of(1, 15, 148)];
    const { low, high } = intervalOfSum([part!]);
    expect(low).toBeCloseTo(part!.low, 12);
    expect(high).toBeCloseTo(part!.high, 12);
  });

  it('of many is narrower than their limits added up', () => {
    const parts = [of(0.5, 3, 10), of(0.5, 7, 10)];
    const sum = intervalOfSum(parts);
    expect(sum.high - sum.low).toBeLessThan(
      parts.reduce((all, { weight, low, high }) => all + weight * (high - low), 0),
    );
  });
});
