import { dayOf } from './days.ts';

/** A calendar day in the student's zone, and how many attempts fell on it. */
export interface DayCount {
  day: string;
  count: number;
}

/**
 * How many attempts were made on each of the latest days, today's last.
 * @param moments of attempts and now, in epoch ms
 */
export function attemptsPerDay(moments: Iterable<number>, now: number, days: number): DayCount[] {
  const date = new Date(now);
  const counts = new Map<string, number>();
  for (let back = days - 1; back >= 0; back--)
    // By the calendar, not by hours: a day may have 23 or 25. Noon is on every day.
    counts.set(dayOf(new Date(date.getFullYear(), date.getMonth(), date.getDate() - back, 12).getTime()), 0);
  for (const at of moments) {
    const day = dayOf(at);
    const before = counts.get(day);
    if (before !== undefined) counts.set(day, before + 1);
  }
  return [...counts].map(([day, count]) => ({ day, count }));
}
