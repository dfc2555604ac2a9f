import type { Found, SearchProgress } from './branch.ts';
import { searchedInCore } from './core-search.ts';
import type { PaperWish } from './offer.ts';
import { type Aim, modelOf } from './paper-model.ts';
import { mostByMarks, worthKeeping } from './presolve.ts';
import type { Pool, Unit } from './units.ts';

/** A wish that stands in the way, and the value nearest to it with which there is a paper. */
export interface Obstacle {
  wish: 'marks' | 'minutes' | 'days';
  nearest: number;
}

export interface Nearest {
  obstacles: Obstacle[];
  /** All of them have to give; else any one of them, by itself. */
  together: boolean;
  /** Nothing is nearer. False where the search was stopped. */
  proven: boolean;
}

type Looking<T> = Generator<SearchProgress, T, 'stop' | undefined>;

/** What all searches for what is nearest have in common. */
interface Look {
  pool: Pool;
  /** Set to false once a search was stopped. */
  proven: boolean;
}

const NO_GOALS = { cost: 0, atMost: Infinity };
/** Minutes are counted to a thousandth. */
const MINUTE_STEP = 0.001;

/**
 * What stands in the way of a paper: each wish is made elastic by itself, and what it is off by is made as small as
 * possible while all others are kept to. Where no single wish is enough, marks give as little as possible with the other
 * two free, then minutes with these marks, then days with both.
 */
export function* nearest(pool: Pool, wish: PaperWish): Looking<Nearest> {
  const look: Look = { pool, proven: true };
  const alone: Obstacle[] = [];
  for (const find of [nearestMarks, nearestMinutes, nearestDays]) {
    const obstacle = yield* find(look, wish);
    if (obstacle) alone.push(obstacle);
  }
  if (alone.length > 0 || !look.proven) return { obstacles: alone, together: false, proven: look.proven };
  const obstacles = yield* allTogether(look, wish);
  return { obstacles, together: true, proven: look.proven };
}

/** The wish with parts of it relaxed as far as they have to be. */
export function eased(wish: PaperWish, obstacles: readonly Obstacle[]): PaperWish {
  const kept = { ...wish };
  for (const { wish: part, nearest: value } of obstacles) {
    if (part === 'marks') kept.marksTolerance = Math.abs(value - wish.marks);
    else if (part === 'minutes') kept.minutes = value;
    else kept.notSeenForDays = value;
  }
  return kept;
}

function* allTogether(look: Look, wish: PaperWish): Looking<Obstacle[]> {
  const marks = yield* nearestMarks(look, { ...wish, minutes: null, notSeenForDays: 0 });
  if (!marks) return [];
  const obstacles = Math.abs(marks.nearest - wish.marks) > wish.marksTolerance ? [marks] : [];
  const minutes = yield* nearestMinutes(look, { ...eased(wish, obstacles), notSeenForDays: 0 });
  if (minutes && minutes.nearest > wish.minutes!) obstacles.push(minutes);
  const days = yield* nearestDays(look, eased(wish, obstacles));
  return days ? [...obstacles, days] : obstacles;
}

function* nearestMarks(look: Look, wish: PaperWish): Looking<Obstacle | null> {
  // With a unit of at most twice the marks, something is off by no more than the marks; else one unit is the nearest.
  const most = Math.max(2 * wish.marks, ...look.pool.units.map(({ marks }) => marks));
  const aim: Aim = { costOf: () => 0, step: 1, goals: { cost: 1, atMost: Infinity }, goal: 'marks' };
  const units = yield* chosen(look, wish, most, aim);
  return units && { wish: 'marks', nearest: units.reduce((sum, { marks }) => sum + marks, 0) };
}

function* nearestMinutes(look: Look, wish: PaperWish): Looking<Obstacle | null> {
  if (wish.minutes === null) return null;
  const aim: Aim = { costOf: ({ minutes }) => minutes, step: MINUTE_STEP, goals: NO_GOALS, goal: null };
  const units = yield* chosen(look, { ...wish, minutes: null }, wish.marks + wish.marksTolerance, aim);
  const minutes = units?.reduce((sum, unit) => sum + unit.minutes, 0);
  return minutes === undefined
    ? null
    : { wish: 'minutes', nearest: Math.round(minutes / MINUTE_STEP) * MINUTE_STEP };
}

/** Fewer days admit more parts, so the most days with which there is a paper are found by halving. */
function* nearestDays(look: Look, wish: PaperWish): Looking<Obstacle | null> {
  const seen = look.pool.units.map(({ daysUnseen }) => daysUnseen);
  const days = [...new Set(seen.filter((each) => each < wish.notSeenForDays))].sort((a, b) => a - b);
  let [possible, from, to] = [-1, 0, days.length];
  while (from < to && look.proven) {
    const middle = possible === -1 && from === 0 && to === days.length ? 0 : (from + to) >> 1;
    const aim: Aim = { costOf: () => 0, step: 1, goals: NO_GOALS, goal: null };
    const easier = { ...wish, notSeenForDays: days[middle]! };
    const units = yield* chosen(look, easier, wish.marks + wish.marksTolerance, aim);
    if (units) [possible, from] = [middle, middle + 1];
    else if (possible === -1) return null;
    else to = middle;
  }
  return possible === -1 || !look.proven ? null : { wish: 'days', nearest: days[possible]! };
}

/** The units of the best paper, whatever its topics; null where there is none. */
function* chosen(look: Look, wish: PaperWish, most: number, aim: Aim): Looking<Unit[] | null> {
  const { pool } = look;
  const admitted = pool.units.flatMap(({ daysUnseen }, unit) =>
    daysUnseen >= wish.notSeenForDays ? [unit] : [],
  );
  const units = worthKeeping(pool, admitted, mostByMarks(most), (unit) => -aim.costOf(unit), sameMarks);
  const found: Found = yield* searchedInCore(modelOf(pool, units, wish, aim), () => 0);
  if (found.status === 'cancelled') look.proven = false;
  return found.choices && units.filter((_, at) => found.choices![at] === 1).map((unit) => pool.units[unit]!);
}

/** Topics do not count here. */
const sameMarks = ({ marks }: Unit): string => String(marks);
