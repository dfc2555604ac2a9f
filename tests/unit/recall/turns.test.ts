import fc from 'fast-check';
import { expect, it } from 'vitest';
import { turnsLeft } from '#lib/recall/turns.ts';
import { DAY, START } from './builders.ts';

const HOUR = DAY / 24;
const NONE = { ifAsked: 0, ifLeft: 0 };

it('is none on the evening before the exam, and none to come for no items', () => {
  expect(turnsLeft(START, START + 15 * HOUR, 600, 1200)).toEqual({ lastAt: START, ...NONE });
  expect(turnsLeft(START, START + 30 * DAY, 600, 0)).toEqual({ lastAt: START, ...NONE });
});

it('comes at the same time of day, eight hours or more before the exam', () => {
  const last = (hours: number) => (turnsLeft(START, START + hours * HOUR, 600, 600).lastAt - START) / DAY;
  expect([31, 32, 39, 55, 56].map(last)).toEqual([0, 1, 1, 1, 2]);
});

it('never comes within eight hours of the exam, let alone after it, unless it is now', () => {
  const anyMinutes = fc.integer({ min: 0, max: 60 * 24 * 60 });
  fc.assert(
    fc.property(anyMinutes, fc.nat(500_000), (minutes, all) => {
      const exam = START + (minutes * HOUR) / 60;
      const { lastAt } = turnsLeft(START, exam, 600, all);
      expect(lastAt).toBeGreaterThanOrEqual(START);
      if (lastAt !== START) expect(lastAt).toBeLessThanOrEqual(exam - 8 * HOUR);
    }),
  );
});

it('is certain for all while there is time for all, first for those left out, then for none', () => {
  const turns = (days: number) => turnsLeft(START, START + days * DAY + 15 * HOUR, 600, 1200);
  expect(turns(2)).toMatchObject({ ifAsked: 1, ifLeft: 1 });
  expect(turns(1)).toMatchObject({ ifAsked: 0, ifLeft: 1 });
  expect(turns(0)).toMatchObject(NONE);
});

it('is certain where all items fit into one day', () => {
  expect(turnsLeft(START, START + 2 * DAY, 600, 60)).toMatchObject({ ifAsked: 1, ifLeft: 1 });
});

it('is a chance, the larger for an item that is left out, and as much in all as there is time for', () => {
  const days = fc.integer({ min: 1, max: 90 });
  fc.assert(
    fc.property(
      days,
      fc.integer({ min: 10, max: 7200 }),
      fc.integer({ min: 10, max: 500_000 }),
      (n, aDay, all) => {
        const { ifAsked, ifLeft } = turnsLeft(START, START + n * DAY + 15 * HOUR, aDay, all);
        expect(ifAsked).toBeGreaterThanOrEqual(0);
        expect(ifLeft).toBeLessThanOrEqual(1);
        expect(ifLeft).toBeGreaterThanOrEqual(ifAsked);
        const today = Math.min(1, aDay / all);
        const inAll = today * ifAsked + (1 - today) * ifLeft;
        expect(inAll).toBeCloseTo(Math.min(1, (n * aDay) / all), 9);
      },
    ),
  );
});
