import { afterEach, expect, test, vi } from 'vitest';
import type { Steps } from '#lib/recall/steps.ts';
import { inSlices } from '#lib/store/slices.ts';

afterEach(() => vi.restoreAllMocks());

/** Each look at the clock finds it so many ms on. */
const clockGoingBy = (step: number) => {
  let now = 0;
  vi.spyOn(performance, 'now').mockImplementation(() => (now += step));
};
function* counting(to: number, seen: number[]): Steps<string> {
  for (let n = 1; n <= to; n++) {
    seen.push(n);
    yield;
  }
  return 'done';
}

test('long work lets the page have its turn, and goes on where it was', async () => {
  clockGoingBy(20);
  const seen: number[] = [];
  const work = inSlices(counting(1000, seen));
  const atPause = seen.length;
  expect(atPause).toBeGreaterThan(0);
  expect(atPause).toBeLessThan(1000);
  expect(await work).toBe('done');
  expect(seen).toEqual(Array.from({ length: 1000 }, (_, i) => i + 1));
});

test('short work is not paused', async () => {
  clockGoingBy(0.01);
  const seen: number[] = [];
  const work = inSlices(counting(1000, seen));
  expect(seen).toHaveLength(1000);
  expect(await work).toBe('done');
});

test('an error in the work is thrown', async () => {
  const failing = function* (): Steps<void> {
    yield;
    throw new Error('no more');
  };
  await expect(inSlices(failing())).rejects.toThrow('no more');
});
