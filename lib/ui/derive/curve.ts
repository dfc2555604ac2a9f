import { type Judgement, judgementOf } from '#lib/model/attempt.ts';
import { forgettingCurve } from '#lib/recall/forgetting-curve.ts';
import { aimOf } from '#lib/recall/next-item.ts';
import { partThen } from '#lib/recall/past-chance.ts';
import { examMoment } from './days.ts';
import type { Standing } from './next-up.ts';

/** A forgetting curve as it is drawn: parts of the marks, 0 to 1, over epoch ms. */
export interface Curve {
  points: { at: number; part: number }[];
  /** The attempts, at what was to be expected just before each. */
  attempts: { at: number; part: number; judgement: Judgement }[];
  from: number;
  to: number;
  isForExam: boolean;
  now: number;
  then: number;
}

/** As many points as a curve is drawn with, about, however many attempts there were; fewer over very many items. */
const POINTS = 600;
const FEWEST = 60;
/** Chances that are worked out for a curve: a quarter of a second or so. */
const CHANCES = 300_000;
/** Points after each attempt at the most, and at the least. */
const DENSE = 40;
const SPARSE = 2;
/** As many attempts are marked on a curve: the latest. */
export const MARKED = 80;

/**
 * The forgetting curve of one item, or of several together, from when the first was written up to exam day.
 * @param ids of items of the course; null is given where none of them is there
 * @param now epoch ms
 */
export function curveOf({ deck, progress }: Standing, ids: ReadonlySet<string>, now: number): Curve | null {
  const { clock, items, memories } = progress;
  const weighed = [...ids].flatMap((id) => {
    const [item, memory] = [items.get(id), memories.get(id)];
    return item && memory ? [{ memory, marks: item.marks }] : [];
  });
  if (weighed.length === 0) return null;
  const examAt = examMoment(deck.course.examDay);
  const to = aimOf(now, examAt);
  const from = weighed.reduce((first, { memory }) => Math.min(first, memory.at[0]!), now);
  const part = partThen(weighed, clock);
  const valueAt = (at: number) => part(at) ?? 0;
  const attempts = deck.attempts.filter(({ itemId }) => ids.has(itemId)).sort((a, b) => a.at - b.at);
  const seen = weighed.flatMap(({ memory }) => memory.at).sort((a, b) => a - b);
  const most = Math.max(FEWEST, Math.min(POINTS, Math.floor(CHANCES / weighed.length)));
  // The latest break the curve; between the earlier ones it is drawn as it comes.
  const practice = seen.slice(-most / SPARSE);
  const perStretch = Math.max(SPARSE, Math.min(DENSE, Math.floor(most / (practice.length + 1))));
  const points = forgettingCurve(valueAt, { from, to, practice, perStretch });
  return {
    points: points.map(({ at, value }) => ({ at, part: value })),
    attempts: attempts.slice(-MARKED).map((attempt) => ({
      at: attempt.at,
      part: valueAt(attempt.at - 1),
      judgement: judgementOf(attempt),
    })),
    from,
    to,
    isForExam: to === examAt,
    now: valueAt(now),
    then: valueAt(to),
  };
}
