// @vitest-environment jsdom
import { render, screen } from '@testing-library/preact';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { KeptMoment } from '#lib/model/message.ts';
import { MomentFields } from '#lib/ui/moment/moment-fields.tsx';
import { faultOf, timeIn } from '#lib/ui/moment/times.ts';
import { fakeExtension } from '../fake-extension.ts';
import { clearScreen, press, read, type } from '../student.ts';

beforeEach(() => fakeExtension());
afterEach(clearScreen);

function showFields(kept: KeptMoment[] = []) {
  const [change, go] = [vi.fn(), vi.fn()];
  const first = { start: 65.4, end: null };
  render(<MomentFields first={first} duration={120} kept={kept} change={change} go={go} />);
  return { change, go };
}

test('it begins at the moment, without an end', () => {
  showFields();
  expect((screen.getByLabelText('From') as HTMLInputElement).value).toBe('1:05');
  expect((screen.getByLabelText('To (optional)') as HTMLInputElement).value).toBe('');
});

test('an end is heard, and the exact beginning stays', async () => {
  const { change } = showFields();
  await type('To (optional)', '1:20');
  expect(change).toHaveBeenLastCalledWith({ start: 65.4, end: 80 });
  await type('From', '1:00');
  expect(change).toHaveBeenLastCalledWith({ start: 60, end: 80 });
  await type('From', '1:05');
  expect(change).toHaveBeenLastCalledWith({ start: 65.4, end: 80 });
});

test.each([
  ['From', 'soon', /“soon” is no time/],
  ['From', '2:30', /The video ends at 2:00/],
  ['To (optional)', '1:00', /The end must come after the beginning/],
])('%s: %s is told', async (field, text, said) => {
  showFields();
  await type(field, text);
  expect((await read(said)).getAttribute('role')).toBe('status');
  await type(field, field === 'From' ? '0:30' : '');
  expect(screen.getByRole('status').textContent).toMatch(/^As minutes and seconds/);
});

test('what was kept of the video is listed, and pressing it goes there', async () => {
  const { go } = showFields([
    { clipId: 'a', fragment: 't=9.5', text: 'Circles shrink.' },
    { clipId: 'b', fragment: 't=14,20', text: 'x'.repeat(200) },
  ]);
  expect((await read('Circles shrink.')).localName).toBe('span');
  expect(screen.getAllByRole('listitem')[1]!.textContent.length).toBeLessThan(120);
  await press('Go there: 0:09');
  expect(go).toHaveBeenLastCalledWith({ start: 9.5 });
  await press('Go there: 0:14 to 0:20');
  expect(go).toHaveBeenLastCalledWith({ start: 14, end: 20 });
});

describe('times', () => {
  test('a text that was not changed stands for the exact time', () => {
    expect(timeIn(' 1:05 ', 65.4)).toBe(65.4);
    expect(timeIn('1:06', 65.4)).toBe(66);
    expect(timeIn('soon', 65.4)).toBe('soon');
  });

  test.each([
    [{ start: 5, end: null }, 10, null],
    [{ start: 5, end: 9 }, 10, null],
    [{ start: 5, end: 5 }, 10, ['errorTimeOrder']],
    [{ start: 'x', end: null }, 10, ['errorTimeUnread', 'x']],
    [{ start: 5, end: 'y' }, 10, ['errorTimeUnread', 'y']],
    [{ start: 5, end: 11 }, 10, ['errorTimeLate', '0:10']],
    [{ start: 5, end: 11 }, Infinity, null],
    [{ start: 5, end: 11 }, NaN, null],
  ])('%j of %s seconds: %j', (times, duration, fault) => expect(faultOf(times, duration)).toEqual(fault));
});
