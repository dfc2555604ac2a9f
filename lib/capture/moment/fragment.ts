/** A moment of a video, in seconds from its beginning; one with an end is a stretch of it. */
export interface Moment {
  start: number;
  end?: number;
}

/** Media Fragments URI 1.0, 4.2.1 Temporal Dimension, in normal play time: `t=12.4` or `t=12.4,20`. */
export function momentFragment({ start, end }: Moment): string {
  return end === undefined ? `t=${seconds(start)}` : `t=${seconds(start)},${seconds(end)}`;
}

/** The moment that such a fragment names; null where it names none. */
export function momentOf(fragment: string): Moment | null {
  const match = /^t=(?:npt:)?(\d+(?:\.\d+)?)(?:,(\d+(?:\.\d+)?))?$/.exec(fragment);
  if (!match) return null;
  const start = Number(match[1]);
  return match[2] === undefined ? { start } : { start, end: Number(match[2]) };
}

const seconds = (time: number): string => String(Math.round(time * 10) / 10);
