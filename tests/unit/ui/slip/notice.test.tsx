// @vitest-environment jsdom
import { render, screen } from '@testing-library/preact';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { Notice } from '#lib/ui/slip/notice.tsx';
import { fakeExtension } from '../fake-extension.ts';
import { clearScreen, key, press, see } from '../student.ts';

beforeEach(() => fakeExtension());
afterEach(clearScreen);

test('it says its text, and Enter leaves', async () => {
  const leave = vi.fn();
  render(<Notice text="Nothing is selected." leave={leave} />);
  expect((await see('alert')).textContent).toBe('Nothing is selected.');
  key('Enter');
  expect(leave).toHaveBeenCalledTimes(1);
});

test('where something can be done, Enter does it', async () => {
  const [leave, run] = [vi.fn(), vi.fn()];
  render(<Notice text="There is no course yet." action={{ label: 'Start a course', run }} leave={leave} />);
  expect(document.activeElement).toBe(screen.getByRole('button', { name: 'Start a course' }));
  key('Enter');
  expect([run.mock.calls.length, leave.mock.calls.length]).toEqual([1, 0]);
  await press(/^Leave/);
  expect(leave).toHaveBeenCalledTimes(1);
});
