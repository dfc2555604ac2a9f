import { describe, expect, it } from 'vitest';
import { comparison } from '#tests/bench/simulation/compare.ts';
import { EXPONENTIAL_LAW, POWER_LAW } from '#tests/bench/simulation/laws.ts';

/** A short form of what `npm run bench -- recall/marks` reports; other students than there. */
describe.each([POWER_LAW, EXPONENTIAL_LAW])('students who forget by a $name', (law) => {
  const found = comparison(law, 10, 700);

  it('get more marks by what gains most than in any fixed order', () => {
    expect(found.ahead.mean).toBeGreaterThan(found.ahead.within);
  });

  it('practise equally long in all orders', () => {
    const attempts = found.policies.map((policy) => policy.attempts);
    expect(Math.max(...attempts)).toBeLessThan(1.12 * Math.min(...attempts));
  });

  it('leave room for an order to matter', () => {
    expect(found.best.marks.mean).toBeLessThan(0.95);
    expect(found.best.marks.mean).toBeGreaterThan(0.4);
  });
});

it('is the same in every run', () => {
  expect(comparison(POWER_LAW, 2, 700)).toEqual(comparison(POWER_LAW, 2, 700));
});
