import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { StudentError } from '#lib/model/student-error.ts';
import { rememberTrouble, takeTrouble } from '#lib/ui/trouble.ts';
import { fakeExtension } from './fake-extension.ts';

beforeEach(() => {
  fakeExtension();
  vi.useFakeTimers({ toFake: ['Date'] });
});
afterEach(() => {
  vi.useRealTimers();
});

test('there is nothing to tell at first', async () => {
  expect(await takeTrouble()).toBeNull();
});

test('trouble is told once, in the words of its message', async () => {
  await rememberTrouble(new StudentError('errorSelectionEmpty'));
  expect(await takeTrouble()).toMatch(/^Nothing is selected\./);
  expect(await takeTrouble()).toBeNull();
});

test('what is no error of the student is told as unexpected', async () => {
  await rememberTrouble(new TypeError('tab without an id'));
  expect(await takeTrouble()).toContain('TypeError: tab without an id');
});

test('of two troubles the later one is told', async () => {
  await rememberTrouble(new StudentError('errorSelectionEmpty'));
  await rememberTrouble(new StudentError('errorPageClosed'));
  expect(await takeTrouble()).toMatch(/^The browser lets no extension/);
});

test.each([
  [29_999, true],
  [30_000, false],
])('after %i ms it is told: %s; stale trouble goes for good', async (later, told) => {
  await rememberTrouble(new StudentError('errorSelectionEmpty'));
  vi.setSystemTime(Date.now() + later);
  expect((await takeTrouble()) !== null).toBe(told);
  vi.setSystemTime(Date.now() - later);
  expect(await takeTrouble()).toBeNull();
});
