import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { betaChance, betaQuantile } from '#lib/papers/beta.ts';
import { BETA_QUANTILES, CHANCES } from '#tests/data/beta-quantiles.ts';

describe.each(BETA_QUANTILES)('Beta($a, $b)', ({ a, b, quantiles }) => {
  it.each(CHANCES.map((chance, i) => [chance, quantiles[i]!]))('has %f below %f', (chance, quantile) => {
    expect(Math.abs(betaQuantile(a, b, chance) - quantile)).toBeLessThan(5.1e-7);
    expect(betaChance(a, b, quantile)).toBeCloseTo(chance, 5);
  });
});

/** For whole numbers it is a sum of binomial chances (NIST Digital Library of Mathematical Functions, 8.17.5). */
function binomialSum(a: number, b: number, x: number): number {
  const n = a + b - 1;
  let [chance, sum] = [1, 0];
  for (let k = 0; k <= n; k++) {
    if (k > 0) chance = (chance * (n - k + 1)) / k;
    if (k >= a) sum += chance * x ** k * (1 - x) ** (n - k);
  }
  return sum;
}

const whole = fc.integer({ min: 1, max: 25 });
const part = fc.double({ min: 0.001, max: 0.999, noNaN: true });

test('agrees with the binomial sum for whole numbers', () => {
  fc.assert(
    fc.property(whole, whole, part, (a, b, x) => {
      expect(betaChance(a, b, x)).toBeCloseTo(binomialSum(a, b, x), 9);
    }),
  );
});

test('quantile and chance undo each other', () => {
  const shape = fc.double({ min: 0.5, max: 80, noNaN: true });
  fc.assert(
    fc.property(shape, shape, part, (a, b, chance) => {
      expect(betaChance(a, b, betaQuantile(a, b, chance))).toBeCloseTo(chance, 6);
    }),
  );
});
