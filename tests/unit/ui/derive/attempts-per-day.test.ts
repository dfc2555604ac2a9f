import { expect, test } from 'vitest';
import { attemptsPerDay } from '#lib/ui/derive/attempts-per-day.ts';

const at = (day: number, hour: number) => new Date(2026, 2, day, hour).getTime();

test('each of the latest days has its count, today last, days without attempts too', () => {
  const moments = [at(1, 9), at(3, 0), at(3, 23), at(4, 8), at(5, 12)];
  expect(attemptsPerDay(moments, at(4, 10), 3)).toEqual([
    { day: '2026-03-02', count: 0 },
    { day: '2026-03-03', count: 2 },
    { day: '2026-03-04', count: 1 },
  ]);
});

test('four weeks have 28 days, whatever the clocks do in them', () => {
  for (const month of [2, 3, 9, 10]) {
    const days = attemptsPerDay([], new Date(2026, month, 31, 0, 30).getTime(), 28);
    expect(new Set(days.map(({ day }) => day)).size).toBe(28);
  }
});
