import { expect, test } from 'vitest';
import { chanceAt, memoryOf } from '#lib/recall/memory.ts';
import { chanceThen, partThen } from '#lib/recall/past-chance.ts';
import { studyClock } from '#lib/recall/study-time.ts';
import { DAY, recalled, START } from './builders.ts';

const attempts = [1, 3, 8].map((day, n) => recalled(n, START + day * DAY, { marks: n % 2 }));
const clock = studyClock(attempts.map(({ at }) => at));
const memory = memoryOf({ createdAt: START }, attempts, clock);

test('after the latest attempt it is the chance that the memory gives', () => {
  for (const day of [8, 8.5, 20, 90])
    expect(chanceThen(memory, clock, START + day * DAY)).toBe(chanceAt(memory, clock, START + day * DAY));
});

test('earlier it counts the practice up to then, with what is known today', () => {
  for (const [day, count] of [
    [0.5, 0],
    [2, 1],
    [7.9, 2],
  ] as const) {
    const before = memoryOf({ createdAt: START }, attempts.slice(0, count), clock);
    const at = START + day * DAY;
    expect(chanceThen(memory, clock, at)).toBeCloseTo(
      chanceAt({ ...before, offset: memory.offset }, clock, at),
      12,
    );
  }
});

test('each attempt lifts it, and it falls between them', () => {
  for (const { at } of attempts) {
    expect(chanceThen(memory, clock, at)!).toBeGreaterThan(chanceThen(memory, clock, at - 1)!);
    expect(chanceThen(memory, clock, at + DAY / 2)!).toBeLessThan(chanceThen(memory, clock, at)!);
  }
});

test('before it was written there is none', () => {
  expect(chanceThen(memory, clock, START - 1)).toBeNull();
});

test('several items count by their marks, each from when it was written', () => {
  const later = memoryOf({ createdAt: START + 5 * DAY }, [], clock);
  const part = partThen(
    [
      { memory, marks: 3 },
      { memory: later, marks: 1 },
    ],
    clock,
  );
  const one = (at: number) => chanceThen(memory, clock, at)!;
  expect(part(START - 1)).toBeNull();
  expect(part(START + 4 * DAY)).toBeCloseTo(one(START + 4 * DAY), 12);
  const at = START + 6 * DAY;
  expect(part(at)).toBeCloseTo((3 * one(at) + chanceThen(later, clock, at)!) / 4, 12);
});
