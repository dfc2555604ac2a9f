import type { Id } from '#lib/model/basics.ts';
import type { Item } from '#lib/model/item.ts';
import { Random } from '../random.ts';
import { type Law, normal, type Trace } from './laws.ts';

export const DAY_MS = 86_400_000;
export const DAYS = 30;
export const SESSION_SECONDS = 600;

/** Days of study begin at this moment: the first session. Any moment would do. */
export const FIRST_SESSION = Date.UTC(2026, 3, 1, 18);

/** The exam: at nine on the morning after the last session. */
export const EXAM = FIRST_SESSION + (DAYS - 1) * DAY_MS + 15 * 3_600_000;

/** Items were written a day before the first session. */
export const WRITTEN = FIRST_SESSION - DAY_MS;

export interface Student {
  items: Item[];
  /** Share of the exam of each item, in the order of the items; sum 1. */
  weights: number[];
  /** Share of the exam of each topic. */
  shares: Map<Id, number>;
  traces: Trace[];
  /** How the n-th attempt at an item goes: full marks where this is below the chance. The same in every order of practice. */
  luck(item: number, n: number): number;
  /** How long the n-th attempt takes, in seconds. */
  seconds(item: number, n: number): number;
}

const TOPICS = 10;
const PER_TOPIC = 10;

const seconds = (moment: number): number => moment / 1000;

/**
 * A student with 100 items in 10 topics of unequal shares of the exam, items of 1 to 3 marks, each of which takes 8 to
 * 15 seconds, some attempts longer than others. The same for the same seed.
 * @param even all items of equal weight
 */
export function makeStudent(law: Law, seed: number, even = false): Student {
  const random = new Random(seed * 7919 + 17);
  const leaning = { ease: normal(random), pace: normal(random) };
  const raw = Array.from({ length: TOPICS }, () => (even ? 1 : 0.3 + random.next() ** 2 * 2));
  const total = raw.reduce((a, b) => a + b, 0);
  const topics = raw.map((share) => ({ id: random.id(), share: share / total }));
  const items: Item[] = [];
  const weights: number[] = [];
  const shares = new Map(topics.map(({ id, share }) => [id, share]));
  for (const topic of topics) {
    const marks = Array.from({ length: PER_TOPIC }, () => (even ? 1 : 1 + random.below(3)));
    const sum = marks.reduce((a, b) => a + b, 0);
    for (const one of marks) {
      // Texts of a length that gives an expected 12 s before the first attempt.
      const text = { asks: 'a'.repeat(60), covers: 'c'.repeat(84) };
      items.push({ kind: 'question', id: random.id(), topicId: topic.id, clipId: null, ...text, marks: one });
      weights.push((topic.share * one) / sum);
    }
  }
  const traces = items.map(() => law.trace(random, seconds(WRITTEN), leaning));
  const usual = items.map(() => 8 + 7 * random.next());
  const drawn = (item: number, n: number): Random => new Random((seed * 131 + item) * 1009 + n * 31 + 7);
  return {
    items,
    weights,
    shares,
    traces,
    luck: (item, n) => drawn(item, n).next(),
    seconds(item, n) {
      const draw = drawn(item, n);
      draw.next();
      return usual[item]! * (0.8 + 0.4 * draw.next());
    },
  };
}
