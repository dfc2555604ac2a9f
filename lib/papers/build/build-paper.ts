import type { SearchProgress } from './branch.ts';
import { searchedInCore } from './core-search.ts';
import { eased, nearest, type Obstacle } from './nearest.ts';
import type { PartOffer, PaperWish } from './offer.ts';
import { deviationStep, modelOf } from './paper-model.ts';
import { paperByTopic } from './by-topic.ts';
import { mostByMarks, mostByTopics, worthKeeping } from './presolve.ts';
import { HUNDREDTHS } from './topic-marks.ts';
import { type BuiltPaper, paperOf } from './built-paper.ts';
import { type Pool, poolOf, type Unit } from './units.ts';

/** How far building is, to be shown. */
export interface BuildProgress extends SearchProgress {
  /** What is being looked for. */
  stage: 'shares' | 'unseen' | 'nearest';
}

/** Building gives way between short pieces of work; what it is given back says whether to stop. */
export type Building<T> = Generator<BuildProgress, T, 'stop' | undefined>;

/** Places in the pool's units, and whether nothing better can be. */
interface Chosen {
  units: number[] | null;
  proven: boolean;
}

/**
 * Builds a paper to a proven optimum. In this order of importance: marks, minutes, parts that belong together, what was
 * seen lately and near copies are kept to; topics are as few marks as possible off what they should have; what was not
 * seen for longest comes first; the seed chooses among equals. See docs/method.md.
 *
 * Where no paper keeps to the wish, `inTheWay` says which single wishes would have to give, and by how much, and the
 * paper is built to the one that has to give least.
 */
export function* buildPaper(offers: readonly PartOffer[], wish: PaperWish): Building<BuiltPaper> {
  const pool = poolOf(offers, wish);
  const chosen = yield* chosenFrom(pool, wish);
  if (chosen.units || !chosen.proven)
    return paperOf(offers, pool, { ...chosen, inTheWay: [], allInTheWay: false, kept: wish });
  const { obstacles, together, proven } = yield* inStage('nearest', nearest(pool, wish));
  const kept = eased(wish, together ? obstacles : leastToGive(obstacles, wish));
  const none: Chosen = { units: null, proven };
  const offered = obstacles.length > 0 && proven ? yield* chosenFrom(pool, kept) : none;
  return paperOf(offers, pool, { ...offered, inTheWay: obstacles, allInTheWay: together, kept });
}

/** Runs to the end. */
export function finish<T>(building: Building<T>): T {
  for (;;) {
    const next = building.next();
    if (next.done) return next.value;
  }
}

/** The one obstacle of which the smallest part has to give. */
function leastToGive(obstacles: readonly Obstacle[], wish: PaperWish): Obstacle[] {
  const wished = { marks: wish.marks, minutes: wish.minutes ?? 0, days: wish.notSeenForDays };
  const part = ({ wish: name, nearest: value }: Obstacle) =>
    Math.abs(value - wished[name]) / Math.max(wished[name], 1);
  return obstacles.toSorted((a, b) => part(a) - part(b)).slice(0, 1);
}

/** First the least deviation, then the best of the papers that have it. */
function* chosenFrom(pool: Pool, wish: PaperWish): Building<Chosen> {
  const most = wish.marks + wish.marksTolerance;
  const admitted = pool.units.flatMap(({ daysUnseen }, unit) =>
    daysUnseen >= wish.notSeenForDays ? [unit] : [],
  );
  const quick = paperByTopic(pool, admitted, wish, worthOf) ?? [];
  const first = withAll(
    worthKeeping(pool, admitted, mostByMarks(most), () => 0),
    quick,
  );
  const unlikely = (unit: number) => awkwardness(pool.units[unit]!);
  const byShares = modelOf(pool, first, wish, {
    costOf: () => 0,
    step: deviationStep(pool, first, wish),
    goals: { cost: 1, atMost: Infinity },
    goal: 'topics',
  });
  const shares = yield* inStage(
    'shares',
    searchedInCore(byShares, (at) => unlikely(first[at]!), startWith(first, quick)),
  );
  const best = shares.choices && first.filter((_, at) => shares.choices![at] === 1);
  if (!best || shares.status === 'cancelled') return { units: best, proven: shares.status === 'proven' };

  const second = withAll(worthKeeping(pool, admitted, mostByTopics(pool, most, shares.cost), worthOf), best);
  const model = modelOf(pool, second, wish, {
    costOf: (unit) => -unit.worth,
    step: 1,
    goals: { cost: 0, atMost: shares.cost },
    goal: 'topics',
  });
  const start = startWith(second, best);
  const unseen = yield* inStage(
    'unseen',
    searchedInCore(model, (at) => unlikely(second[at]!), start),
  );
  return {
    units: second.filter((_, at) => unseen.choices![at] === 1),
    proven: unseen.status === 'proven',
  };
}

/** Units of both, in the pool's order. */
const withAll = (units: readonly number[], more: readonly number[]): number[] =>
  [...new Set([...units, ...more])].sort((a, b) => a - b);

/** The columns of a model that a paper chooses; null for no paper. */
const startWith = (units: readonly number[], paper: readonly number[]): Int8Array | null =>
  paper.length > 0 ? Int8Array.from(units, (unit) => (paper.includes(unit) ? 1 : 0)) : null;

/** What the second stage makes as large as possible. */
const worthOf = ({ worth }: Unit): number => worth;

/** How hard it is to make up even marks with a unit: marks in fractions, long parts, much time. */
function awkwardness({ topics, marks, minutes }: Unit): number {
  const fractions = [...topics.values()].filter((each) => each % HUNDREDTHS !== 0).length;
  return fractions * 1000 + marks * 10 + minutes / marks;
}

/** Says which stage a search's progress is of. */
export function* inStage<T>(
  stage: BuildProgress['stage'],
  search: Generator<SearchProgress, T, 'stop' | undefined>,
): Building<T> {
  let answer: 'stop' | undefined;
  for (;;) {
    const next: IteratorResult<SearchProgress, T> = answer ? search.next(answer) : search.next();
    if (next.done) return next.value;
    answer = yield { stage, ...next.value };
  }
}
