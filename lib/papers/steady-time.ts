import type { Millis } from '#lib/model/basics.ts';

/** One look at the clocks. */
export interface Look {
  /** The system clock: epoch milliseconds. It can be set while a sitting runs. */
  wall: Millis;
  /** Milliseconds of a clock that nobody can set (High Resolution Time: performance.now); null where there is none. */
  monotonic: number | null;
  /** Which page's monotonic clock that is: a reload begins another. */
  page: string;
}

/**
 * What is odd about the system clock between two looks:
 * - `setBack`: it went back, or on by less than the page's own clock: somebody set it. The page's own clock is taken.
 * - `jumped`: it went on by more than the page's own clock. The computer slept, or somebody set it forward: the two
 *   cannot be told apart, as the page's clock may stand still in sleep. Time is taken to have passed, since the clock
 *   of an exam does not wait.
 * - `setBackUnseen`: it went back while no page was open. How much time passed cannot be known: none is counted.
 */
export type Oddity = 'setBack' | 'jumped' | 'setBackUnseen';

/** How far a sitting has come. It lives as long as its page; a new page begins from the start and the wall clock. */
export interface SteadyTime {
  startedAt: Millis;
  /** Milliseconds since the start, never fewer at a later look. */
  passed: Millis;
  last: Look;
  /** `by`: how far the clocks, or the clock and what is on record, lie apart. */
  odd: { at: Millis; about: Oddity; by: Millis }[];
}

/** Clocks are set right by small steps all the time; what is odd is more than this. Our choice. */
export const TOLERATED = 2_000;

/**
 * The first look of a page. After a closed window nothing but the wall clock is known: it is assumed not to have been
 * set since the last moment on record.
 *
 * @param known the latest moment that is on record: the start, or the last event
 */
export function firstLook(startedAt: Millis, known: Millis, look: Look): SteadyTime {
  const at = Math.max(startedAt, known);
  const odd: SteadyTime['odd'] =
    look.wall < at - TOLERATED ? [{ at, about: 'setBackUnseen', by: at - look.wall }] : [];
  return { startedAt, passed: Math.max(at, look.wall) - startedAt, last: look, odd };
}

/** The next look: the time that passed since the last one, and what was odd about it. */
export function nextLook(time: SteadyTime, look: Look): SteadyTime {
  const { last } = time;
  const onWall = look.wall - last.wall;
  const isSamePage = look.page === last.page && look.monotonic !== null && last.monotonic !== null;
  const onPage = isSamePage ? Math.max(0, look.monotonic! - last.monotonic!) : null;
  const { by, about } =
    onPage !== null
      ? between(onWall, onPage)
      : { by: Math.max(0, onWall), about: onWall < -TOLERATED ? ('setBackUnseen' as const) : null };
  const passed = time.passed + by;
  const apart = Math.abs(onWall - (onPage ?? 0));
  const odd = about ? [...time.odd, { at: time.startedAt + passed, about, by: apart }] : time.odd;
  return { ...time, passed, last: look, odd };
}

/** The moment to reckon with: as the system clock would show it had nobody set it back. */
export const steadyMoment = ({ startedAt, passed }: SteadyTime): Millis => Math.round(startedAt + passed);

function between(onWall: number, onPage: number): { by: number; about: Oddity | null } {
  if (onWall < onPage - TOLERATED) return { by: onPage, about: 'setBack' };
  if (onWall > onPage + TOLERATED) return { by: onWall, about: 'jumped' };
  return { by: onPage, about: null };
}
