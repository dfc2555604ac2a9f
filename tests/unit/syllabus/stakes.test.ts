import { expect, it } from 'vitest';
import { wilson } from '#lib/syllabus/interval.ts';
import { securedOverall, stakeOf } from '#lib/syllabus/stakes.ts';

it('a topic with nothing to ask: all of its share is at stake, or none', () => {
  expect(stakeOf({ share: 0.2, asked: 0, securedPart: 0 })).toEqual({ part: 0.2, low: 0, high: 0.2 });
});

it('a topic half secured: half of its share, between limits that are of its share, too', () => {
  const { low, high } = wilson(5, 10);
  const stake = stakeOf({ share: 0.2, asked: 10, securedPart: 0.5 });
  expect(stake.part).toBeCloseTo(0.1, 12);
  expect(stake.low).toBeCloseTo(0.2 * (1 - high), 12);
  expect(stake.high).toBeCloseTo(0.2 * (1 - low), 12);
});

it('overall the parts add up, and the limits stay within the exam', () => {
  const found = securedOverall([
    { share: 0.5, asked: 10, securedPart: 1 },
    { share: 0.3, asked: 10, securedPart: 0.5 },
    { share: 0.2, asked: 0, securedPart: 0 },
  ]);
  expect(found.part).toBeCloseTo(0.65, 12);
  expect(found.low).toBeGreaterThan(0.4);
  expect(found.low).toBeLessThan(0.65);
  expect(found.high).toBeGreaterThan(0.65);
  expect(found.high).toBeLessThanOrEqual(1);
  expect(securedOverall([])).toEqual({ part: 0, low: 0, high: 0 });
});
