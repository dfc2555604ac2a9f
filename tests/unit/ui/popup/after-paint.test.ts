// @vitest-environment jsdom
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { afterPaint } from '#lib/ui/popup/after-paint.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

test('it comes with the second frame, once', () => {
  const work = vi.fn();
  afterPaint(work);
  vi.advanceTimersToNextFrame();
  expect(work).not.toHaveBeenCalled();
  vi.advanceTimersToNextFrame();
  expect(work).toHaveBeenCalledOnce();
  vi.advanceTimersByTime(1000);
  expect(work).toHaveBeenCalledOnce();
});

test('where nothing is painted it comes after a while', () => {
  vi.stubGlobal('requestAnimationFrame', () => 0);
  const work = vi.fn();
  afterPaint(work);
  vi.advanceTimersByTime(249);
  expect(work).not.toHaveBeenCalled();
  vi.advanceTimersByTime(1);
  expect(work).toHaveBeenCalledOnce();
});

test('it can be called off, before the first frame and after it', () => {
  const work = vi.fn();
  afterPaint(work)();
  const stop = afterPaint(work);
  vi.advanceTimersToNextFrame();
  stop();
  vi.advanceTimersByTime(1000);
  expect(work).not.toHaveBeenCalled();
});
