const DAY_MS = 86_400_000;

/** The calendar day of a moment (epoch ms) in the student's zone, as "2026-05-14". */
export function dayOf(at: number): string {
  const date = new Date(at);
  const two = (part: number) => String(part).padStart(2, '0');
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
}

/** When an exam on a day begins: nine in the morning in the student's zone, by common practice. Epoch ms, or null. */
export function examMoment(day: string | null): number | null {
  return day === null ? null : new Date(`${day}T09:00`).getTime();
}

/** Whole days from the day of `now` to a calendar day; negative when it is past. */
export function daysUntil(day: string, now: number): number {
  // Noon to noon, rounded: a change to or from summer time moves it by an hour only.
  const noon = (d: string) => new Date(`${d}T12:00`).getTime();
  return Math.round((noon(day) - noon(dayOf(now))) / DAY_MS);
}
