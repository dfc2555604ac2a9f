import { readTime, writeTime } from '#lib/capture/moment/time.ts';
import type { ErrorName } from '#lib/model/student-error.ts';

/** What the fields say: seconds, or the text that is no time; no end where the field is empty. */
export interface Times {
  start: number | string;
  end: number | string | null;
}

/** What the student wrote, read; `exact` stands for itself as long as its text was not changed. */
export function timeIn(text: string, exact: number | null): number | string {
  if (exact !== null && text.trim() === writeTime(exact)) return exact;
  return readTime(text) ?? text.trim();
}

/** The error that stands in the way of keeping these times, with its values; null where there is none. */
export function faultOf({ start, end }: Times, duration: number): [ErrorName, ...string[]] | null {
  for (const time of [start, end]) {
    if (typeof time === 'string') return ['errorTimeUnread', time];
    // A live video has no end, and one that is still loading may not know it.
    if (time !== null && time > duration) return ['errorTimeLate', writeTime(duration)];
  }
  return end !== null && end <= start ? ['errorTimeOrder'] : null;
}
