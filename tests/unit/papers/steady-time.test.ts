import fc from 'fast-check';
import { expect, test } from 'vitest';
import { firstLook, type Look, nextLook, steadyMoment, TOLERATED } from '#lib/papers/steady-time.ts';
import { MORNING } from '../builders.ts';

const MINUTE = 60_000;
const look = (wall: number, monotonic: number | null, page = 'a'): Look => ({
  wall: MORNING + wall * MINUTE,
  monotonic: monotonic === null ? null : monotonic * MINUTE,
  page,
});
const begin = () => firstLook(MORNING, MORNING, look(0, 7));
const minutes = (time: ReturnType<typeof begin>): number => (steadyMoment(time) - MORNING) / MINUTE;
const oddities = (time: ReturnType<typeof begin>) => time.odd.map(({ about, by }) => [about, by / MINUTE]);

test('clocks that agree', () => {
  const time = nextLook(nextLook(begin(), look(10, 17)), look(25, 32));
  expect(minutes(time)).toBe(25);
  expect(oddities(time)).toEqual([]);
});

test('a clock set back gives no more time', () => {
  const time = nextLook(begin(), look(-50, 17));
  expect(minutes(time)).toBe(10);
  expect(oddities(time)).toEqual([['setBack', 60]]);
  expect(minutes(nextLook(time, look(-45, 22)))).toBe(15);
});

test('sleep, or a clock set forward, takes time, and is said', () => {
  const time = nextLook(begin(), look(40, 12));
  expect(minutes(time)).toBe(40);
  expect(oddities(time)).toEqual([['jumped', 35]]);
});

test('after a closed window the wall clock is all that is known', () => {
  const time = firstLook(MORNING, MORNING + 10 * MINUTE, look(33, 0, 'b'));
  expect(minutes(time)).toBe(33);
  expect(oddities(time)).toEqual([]);
});

test('a clock set back behind what is on record counts from there', () => {
  const time = firstLook(MORNING, MORNING + 10 * MINUTE, look(-20, 0, 'b'));
  expect(minutes(time)).toBe(10);
  expect(oddities(time)).toEqual([['setBackUnseen', 30]]);
  expect(minutes(nextLook(time, look(-18, 2, 'b')))).toBe(12);
});

test('readings of two pages, or of none, are not compared', () => {
  expect(minutes(nextLook(begin(), look(5, 0, 'b')))).toBe(5);
  expect(minutes(nextLook(begin(), look(5, null)))).toBe(5);
  const back = nextLook(begin(), look(-5, 0, 'b'));
  expect(minutes(back)).toBe(0);
  expect(oddities(back)).toEqual([['setBackUnseen', 5]]);
});

test('time never runs back, and with one page never behind its own clock', () => {
  const steps = fc.array(fc.record({ wall: fc.integer({ min: -9e6, max: 9e6 }), monotonic: fc.nat(9e5) }), {
    maxLength: 30,
  });
  fc.assert(
    fc.property(steps, (all) => {
      let time = begin();
      for (const step of all) {
        const { wall, monotonic, page } = time.last;
        const next = nextLook(time, { wall: wall + step.wall, monotonic: monotonic! + step.monotonic, page });
        expect(next.passed - time.passed).toBeGreaterThanOrEqual(step.monotonic);
        expect(next.passed - time.passed).toBeLessThanOrEqual(
          Math.max(step.monotonic + TOLERATED, step.wall),
        );
        time = next;
      }
    }),
  );
});
