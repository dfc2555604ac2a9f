import { afterEach, describe, expect, test, vi } from 'vitest';
import { dayOf, daysUntil, examMoment } from '#lib/ui/derive/days.ts';

const HOUR = 3_600_000;

afterEach(() => {
  vi.unstubAllEnvs();
});

/** Zones on both sides of UTC; one has its summer in January, two put their clocks on at midnight. */
const ZONES = [
  'UTC',
  'Europe/London',
  'America/New_York',
  'Australia/Sydney',
  'Pacific/Kiritimati',
  'Africa/Cairo',
  'Asia/Beirut',
];

describe.each(ZONES)('in %s', (zone) => {
  test('every hour of a year lies on one day, whose end is the next day', () => {
    vi.stubEnv('TZ', zone);
    const inWords = new Intl.DateTimeFormat('en-CA', { timeZone: zone });
    for (let at = Date.UTC(2026, 0, 1); at < Date.UTC(2027, 0, 1); at += 5 * HOUR)
      expect(dayOf(at)).toBe(inWords.format(at));
  });

  test('the exam begins at nine by the clock on the wall, summer or winter', () => {
    vi.stubEnv('TZ', zone);
    const clock = new Intl.DateTimeFormat('en-GB', { timeZone: zone, hour: '2-digit', minute: '2-digit' });
    for (const day of ['2026-01-15', '2026-03-29', '2026-07-15', '2026-10-25']) {
      const begins = examMoment(day)!;
      expect(clock.format(begins)).toBe('09:00');
      expect(dayOf(begins)).toBe(day);
    }
  });

  test('a day comes one nearer each day of the year, whatever the hour', () => {
    vi.stubEnv('TZ', zone);
    for (let day = 0; day < 365; day++) {
      const date = new Date(2026, 0, 1 + day);
      for (const hour of [0, 3, 12, 23]) {
        const now = new Date(2026, 0, 1 + day, hour, 30).getTime();
        if (dayOf(now) !== dayOf(date.getTime() + 12 * HOUR)) continue;
        expect(daysUntil('2027-01-01', now)).toBe(365 - day);
      }
    }
  });
});

test('the night in which the clock is put on makes no day longer or shorter', () => {
  vi.stubEnv('TZ', 'Europe/London');
  // 2026-03-29, 01:00 UTC: 00:59 GMT is followed by 02:00 BST.
  const change = Date.UTC(2026, 2, 29, 1);
  expect([dayOf(change - HOUR - 1), dayOf(change - HOUR)]).toEqual(['2026-03-28', '2026-03-29']);
  expect(daysUntil('2026-03-30', change - 1)).toBe(1);
  expect(daysUntil('2026-03-30', change)).toBe(1);
  // 23 hours later it is the next day: midnight BST is 23:00 UTC.
  expect(dayOf(change + 22 * HOUR - 1)).toBe('2026-03-29');
  expect(dayOf(change + 22 * HOUR)).toBe('2026-03-30');
});

test('the night in which the clock is put back makes no day longer or shorter', () => {
  vi.stubEnv('TZ', 'Europe/London');
  // 2026-10-25, 01:00 UTC: 01:59 BST is followed by 01:00 GMT.
  const change = Date.UTC(2026, 9, 25, 1);
  expect([dayOf(change - 2 * HOUR - 1), dayOf(change - 2 * HOUR)]).toEqual(['2026-10-24', '2026-10-25']);
  expect(daysUntil('2026-10-26', change - HOUR)).toBe(1);
  expect(daysUntil('2026-10-26', change + HOUR)).toBe(1);
  expect([dayOf(change + 23 * HOUR - 1), dayOf(change + 23 * HOUR)]).toEqual(['2026-10-25', '2026-10-26']);
});

test('today is no day away, and a day that is past counts below nought', () => {
  vi.stubEnv('TZ', 'Europe/London');
  const now = Date.UTC(2026, 4, 14, 22, 59);
  expect(daysUntil('2026-05-14', now)).toBe(0);
  expect(daysUntil('2026-05-11', now)).toBe(-3);
});

test('without a day there is no moment', () => {
  expect(examMoment(null)).toBeNull();
});
