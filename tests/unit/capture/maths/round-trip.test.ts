import { beforeAll, describe, expect, it } from 'vitest';
import corpus from '#tests/data/formulas.json' with { type: 'json' };
import { LOST, type RoundTrip, cameBack, roundTrips } from './round-trip.ts';
import { type Formula, TYPESETTERS } from './typesetters.ts';

const { formulas, sources } = corpus;

const GOAL = 0.98;

it('the formulas are many, different, and from named sources under free licences', () => {
  expect(formulas.length).toBeGreaterThanOrEqual(300);
  expect(new Set(formulas.map(({ tex }) => tex)).size).toBe(formulas.length);
  for (const { id, licence, formulas: count } of sources) {
    expect(licence).toMatch(/^(MIT|Apache-2\.0|BSD-3-Clause)$/);
    expect(formulas.filter(({ source }) => source === id)).toHaveLength(count);
  }
});

const missed = (trips: readonly (RoundTrip | null)[], of: readonly Formula[]): string[] =>
  of.filter((_formula, index) => !cameBack(trips[index]!)).map(({ tex }) => tex);

describe.each(TYPESETTERS)('$name', ({ name, typeset, keeps }) => {
  // The benchmark takes all of all.
  const chosen = formulas.filter((_formula, index) => index % (name === 'katex' ? 3 : 20) === 1);
  let trips: (RoundTrip | null)[] = [];

  beforeAll(async () => {
    trips = roundTrips(await typeset(chosen), chosen);
  }, 300_000);

  it('at least 98 % of the formulas come back', () => {
    expect(trips).toHaveLength(chosen.length);
    expect(missed(trips, chosen).length / chosen.length).toBeLessThanOrEqual(1 - GOAL);
  });

  it('no formula is there twice, or displayed where it was inline', () => {
    expect(trips.filter((trip) => trip && trip !== LOST && !trip.once)).toEqual([]);
  });

  it(`the page's ${keeps.join(' and ')} came along`, () => {
    const seen = trips.filter((trip) => trip !== null);
    expect(seen.filter(({ tex }) => tex !== null).length > 0).toBe(keeps.includes('TeX'));
    expect(seen.filter(({ normal }) => normal !== null).length > 0).toBe(keeps.includes('MathML'));
  });
});
