import type { Id } from '#lib/model/basics.ts';
import type { Boundary } from '#lib/model/paper.ts';
import { type Interval, intervalOfSum, wilson } from '#lib/syllabus/interval.ts';
import { CAUSES, type Cause, type Marking } from './marking.ts';

/** Marks of one topic, over one sitting or several. */
export interface TopicMarks {
  /** Null for parts without a topic. */
  topicId: Id | null;
  got: number;
  outOf: number;
  /** How many parts it was in. */
  parts: number;
  /** See effectiveParts. */
  effective: number;
  /** The part of its marks that was got, 0 to 1, with its limits at 95 %. */
  estimate: number;
  interval: Interval;
  /** Marks lost, by cause; they add up to what is missing. */
  lost: Map<Cause, number>;
}

/**
 * Marks by topic, in the order in which topics come up. The marks of a part with several topics are divided evenly among
 * them. Parts out of 0 count for nothing.
 *
 * The interval is Wilson's, with so many trials as the effective number of parts: marks within one part hang together,
 * and counting each as a trial would make it too narrow. It is too wide where they do not.
 */
export function marksByTopic(markings: readonly Marking[]): TopicMarks[] {
  const tallies = new Map<Id | null, Tally>();
  for (const { part, got, lost } of markings.flatMap(({ parts }) => parts)) {
    if (part.marks === 0) continue;
    const topicIds = part.topicIds.length > 0 ? new Set(part.topicIds) : new Set([null]);
    for (const topicId of topicIds) {
      const tally: Tally = tallies.get(topicId) ?? { got: 0, outOfs: [], lost: new Map() };
      tallies.set(topicId, tally);
      tally.got += got / topicIds.size;
      tally.outOfs.push(part.marks / topicIds.size);
      for (const [cause, marks] of lost)
        tally.lost.set(cause, (tally.lost.get(cause) ?? 0) + marks / topicIds.size);
    }
  }
  return [...tallies].map(([topicId, tally]) => topicMarks(topicId, tally));
}

interface Tally {
  got: number;
  outOfs: number[];
  lost: Map<Cause, number>;
}

function topicMarks(topicId: Id | null, { got, outOfs, lost }: Tally): TopicMarks {
  const outOf = outOfs.reduce((sum, marks) => sum + marks, 0);
  const effective = effectiveParts(outOfs);
  const estimate = Math.min(1, got / outOf);
  return {
    topicId,
    got,
    outOf,
    parts: outOfs.length,
    effective,
    estimate,
    interval: wilson(estimate * effective, effective),
    lost: new Map([...lost].sort(([a], [b]) => CAUSES.indexOf(a) - CAUSES.indexOf(b))),
  };
}

/**
 * How many parts of the same marks would tell as much as these: the square of the sum of their weights over the sum of
 * squares (Kish 1965, Survey Sampling, the effective sample size).
 */
export function effectiveParts(outOfs: readonly number[]): number {
  const sum = outOfs.reduce((all, marks) => all + marks, 0);
  const squares = outOfs.reduce((all, marks) => all + marks ** 2, 0);
  return squares > 0 ? sum ** 2 / squares : 0;
}

/** What was to be expected of a topic: a part of its marks, 0 to 1, with its limits at 95 %. */
export interface Forecast extends Interval {
  estimate: number;
}

/** Marks beside their forecast. */
export interface Against {
  /** What was got less what was expected, as a part of the marks, with its limits at 95 %. */
  difference: Forecast;
  /** `within`: the two may be the same. */
  verdict: 'above' | 'within' | 'below';
}

/** Compares marks with a forecast: Newcombe's interval for a difference, see intervalOfSum. */
export function againstForecast(
  { estimate, interval }: Pick<TopicMarks, 'estimate' | 'interval'>,
  forecast: Forecast,
): Against {
  const difference = intervalOfSum([
    { weight: 1, estimate, ...interval },
    { weight: -1, ...forecast },
  ]);
  const verdict = difference.low > 0 ? 'above' : difference.high < 0 ? 'below' : 'within';
  return { difference, verdict };
}

/** Where marks stand among the boundaries. */
export interface Grade {
  /** Null below the lowest boundary. */
  grade: string | null;
  /** The next grade up and the marks that it takes more; null at the top. */
  next: { grade: string; missing: number } | null;
}

/** The grade that marks amount to by the boundaries that were entered; null where none were. */
export function gradeOf(got: number, boundaries: readonly Boundary[]): Grade | null {
  if (boundaries.length === 0) return null;
  const rising = boundaries.toSorted((a, b) => a.marks - b.marks);
  const reached = rising.findLast(({ marks }) => marks <= got);
  const next = rising.find(({ marks }) => marks > got);
  return {
    grade: reached?.grade ?? null,
    next: next ? { grade: next.grade, missing: next.marks - got } : null,
  };
}
