import type { Millis } from '#lib/model/basics.ts';
import type { Sitting } from '#lib/model/sitting.ts';

/** A stretch of time; the end is null while it runs. */
export interface Stretch {
  from: Millis;
  to: Millis | null;
}

export type Timed = Pick<Sitting, 'startedAt' | 'minutes' | 'extraPercent'>;

/**
 * How long a sitting may take, rest breaks apart, in milliseconds: the paper's minutes and the extra time of an access
 * arrangement. Which extra is due is for the exam centre to say.
 */
export const allowedMillis = ({ minutes, extraPercent }: Omit<Timed, 'startedAt'>): Millis =>
  Math.round(minutes * 60_000 * (1 + extraPercent / 100));

/**
 * How long rest breaks took up to a moment, in milliseconds. Where two overlap (a sitting open in two windows), the
 * time they share counts once. What lies before the start counts for nothing.
 */
export function restMillis(rests: readonly Stretch[], startedAt: Millis, at: Millis): Millis {
  let [rested, reached] = [0, startedAt];
  for (const { from, to } of rests.toSorted((a, b) => a.from - b.from)) {
    const end = Math.min(to ?? at, at);
    rested += Math.max(0, end - Math.max(from, reached));
    reached = Math.max(reached, end);
  }
  return rested;
}

/**
 * The moment at which time is up, as far as is known at a moment: a rest break moves it by its recorded length, and
 * one that still runs moves it on with every look.
 */
export const endsAt = (sitting: Timed, rests: readonly Stretch[], at: Millis): Millis =>
  sitting.startedAt + allowedMillis(sitting) + restMillis(rests, sitting.startedAt, at);

/** Time left at a moment, in milliseconds; below 0 it is up by so much. */
export const millisLeft = (sitting: Timed, rests: readonly Stretch[], at: Millis): Millis =>
  endsAt(sitting, rests, at) - at;

/** Time worked up to a moment, in milliseconds: since the start, without rest breaks, and no more than is allowed. */
export function workedMillis(sitting: Timed, rests: readonly Stretch[], at: Millis): Millis {
  const worked = at - sitting.startedAt - restMillis(rests, sitting.startedAt, at);
  return Math.max(0, Math.min(allowedMillis(sitting), worked));
}

/** Where someone stands who works through a paper in its order at an even pace. */
export interface Position {
  /** Marks that should be behind them. */
  marks: number;
  /** Index of the part that they should be at; that of the last when all are done. -1 without parts. */
  part: number;
}

/**
 * Time against marks: where in the paper an even pace has come to. The minutes a mark takes are the paper's own: its
 * allowed time by its marks ("a mark a minute" has no official source).
 *
 * @param worked milliseconds of work, and `allowed` those there are
 */
export function positionAt(parts: readonly { marks: number }[], worked: Millis, allowed: Millis): Position {
  const total = parts.reduce((sum, { marks }) => sum + marks, 0);
  const marks = allowed > 0 ? total * Math.max(0, Math.min(1, worked / allowed)) : 0;
  let behind = 0;
  const part = parts.findIndex((one) => (behind += one.marks) > marks);
  return { marks, part: part < 0 ? parts.length - 1 : part };
}

/** Minutes that a mark may take, by the paper's own numbers; null without marks. */
export const minutesPerMark = (minutes: number, marks: number): number | null =>
  marks > 0 ? minutes / marks : null;

/** Warnings at one look at the clock. */
export interface Warnings {
  /** The one to give now, in minutes left; null for none. */
  give: number | null;
  /** All that will not be given any more, for the next look. */
  done: number[];
}

/**
 * The warning that is due. Each is given once; where the page was closed over several, only the latest is given and
 * those before it are done with. One for longer than the sitting was never due. Nothing is warned of when time is up.
 *
 * @param chosen minutes before the end
 * @param done what the last look gave as `done`
 */
export function warningsAt(
  chosen: readonly number[],
  done: readonly number[],
  left: Millis,
  allowed: Millis,
): Warnings {
  const passed = chosen.filter((minutes) => left <= minutes * 60_000 && minutes * 60_000 < allowed);
  const fresh = passed.filter((minutes) => !done.includes(minutes));
  const due = fresh.length > 0 ? Math.min(...fresh) : null;
  return {
    give: left > 0 ? due : null,
    done: [...new Set([...done, ...passed])],
  };
}
