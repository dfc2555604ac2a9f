import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chanceOfRecall, THRESHOLD } from '#lib/recall/activation.ts';
import {
  addTrial,
  meanChance as chanceAtStrength,
  meanOffset,
  noEvidence,
  OFFSET_SD,
  OFFSETS,
  type Weights,
  weightsOf,
} from '#lib/recall/offset.ts';

interface Trial {
  m: number;
  fraction: number;
}

/** Weights after attempts that are given by their activation. */
function weightsAfter(trials: readonly Trial[]): number[] {
  const evidence = noEvidence();
  for (const { m, fraction } of trials) addTrial(evidence, { strength: Math.exp(m), fraction });
  return weightsOf(evidence);
}

const meanChance = (weights: Weights, m: number): number => chanceAtStrength(weights, Math.exp(m));

const prior = weightsAfter([]);
const anyM = fc.double({ min: -6, max: 7, noNaN: true });
const anyTrials = fc.array(fc.record({ m: anyM, fraction: fc.constantFrom(0, 0.25, 0.5, 1) }), {
  maxLength: 30,
});
const times = (n: number, trial: Trial): Trial[] => Array.from({ length: n }, () => trial);

describe('before any attempt', () => {
  it('the offset has the mean and spread it is said to have', () => {
    const variance = prior.reduce((sum, w, i) => sum + w * (OFFSETS[i] ?? 0) ** 2, 0);
    expect(meanOffset(prior)).toBeCloseTo(0, 9);
    expect(Math.sqrt(variance)).toBeCloseTo(OFFSET_SD, 2);
  });

  it('the chance is even at the threshold, and nearer to even than the common item elsewhere', () => {
    expect(meanChance(prior, THRESHOLD)).toBeCloseTo(0.5, 9);
    expect(meanChance(prior, THRESHOLD - 1)).toBeGreaterThan(chanceOfRecall(THRESHOLD - 1));
    expect(meanChance(prior, THRESHOLD + 1)).toBeLessThan(chanceOfRecall(THRESHOLD + 1));
  });
});

describe('attempts', () => {
  it('move the offset up with full marks, down with none, and not with half of them, at the threshold', () => {
    const after = (fraction: number): number => meanOffset(weightsAfter([{ m: THRESHOLD, fraction }]));
    expect(after(1)).toBeGreaterThan(0.1);
    expect(after(0)).toBeCloseTo(-after(1), 9);
    expect(after(0.5)).toBeCloseTo(0, 9);
  });

  it('say little where the outcome was to be expected', () => {
    expect(meanOffset(weightsAfter([{ m: 1, fraction: 1 }]))).toBeLessThan(0.05);
    expect(meanOffset(weightsAfter([{ m: 1, fraction: 0 }]))).toBeLessThan(-0.5);
  });

  it("weigh as Bayes' rule says", () => {
    const weigh = (b: number): number => {
      const [p, q] = [chanceOfRecall(-1 + b), chanceOfRecall(-0.3 + b)];
      return Math.exp(-(b ** 2) / (2 * OFFSET_SD ** 2)) * (1 - p) * q ** 0.25 * (1 - q) ** 0.75;
    };
    const sum = OFFSETS.reduce((all, b) => all + weigh(b), 0);
    const weights = weightsAfter([
      { m: -1, fraction: 0 },
      { m: -0.3, fraction: 0.25 },
    ]);
    for (const [i, b] of OFFSETS.entries()) expect(weights[i]).toBeCloseTo(weigh(b) / sum, 12);
  });

  it('leave the chance, averaged over how the next may go, as it was', () => {
    fc.assert(
      fc.property(anyTrials, anyM, anyM, (trials, m, later) => {
        const chance = (fraction: number): number =>
          meanChance(weightsAfter([...trials, { m, fraction }]), later);
        const p = meanChance(weightsAfter(trials), m);
        expect(p * chance(1) + (1 - p) * chance(0)).toBeCloseTo(meanChance(weightsAfter(trials), later), 9);
      }),
    );
  });

  it('give a distribution, whatever they are', () => {
    fc.assert(
      fc.property(anyTrials, (trials) => {
        const weights = weightsAfter(trials);
        expect(weights.reduce((a, b) => a + b)).toBeCloseTo(1, 9);
        expect(weights.every((w) => w >= 0)).toBe(true);
      }),
    );
  });

  it('can be outweighed by later ones', () => {
    const missed = times(200, { m: THRESHOLD, fraction: 0 });
    expect(meanOffset(weightsAfter(missed))).toBeLessThan(-1.2);
    expect(
      meanOffset(weightsAfter([...missed, ...times(400, { m: THRESHOLD, fraction: 1 })])),
    ).toBeGreaterThan(0);
  });
});

it('is the mean over the chances at each offset, worked out one by one', () => {
  fc.assert(
    fc.property(anyTrials, anyM, (trials, m) => {
      const weights = weightsAfter(trials);
      const mean = OFFSETS.reduce((sum, b, i) => sum + weights[i]! * chanceOfRecall(m + b), 0);
      expect(Math.abs(meanChance(weights, m) - mean)).toBeLessThan(1e-12);
    }),
  );
});
