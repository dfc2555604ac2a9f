import type { Id } from '#lib/model/basics.ts';
import { type Ranked, nextItems } from './next-item.ts';

/** What some minutes of practice are expected to bring. */
export interface MinutesGain {
  /** Marks of an exam of EXAM_MARKS. */
  marks: number;
  /** Items asked in that time. */
  items: number;
  /** The topic with the largest part of it, and that part in marks; null where nothing is gained. */
  most: { topicId: Id; marks: number } | null;
}

/** An item takes two seconds at the least (expected-seconds.ts). */
const LEAST_SECONDS = 2;

/**
 * What the next items would bring on exam day if they were asked now, one after another for so long: the sum of what
 * each adds. Items that are better left for later add nothing.
 * @param ranked as rankItems gives them
 */
export function gainOfMinutes(ranked: readonly Ranked[], minutes: number): MinutesGain {
  const byTopic = new Map<Id, number>();
  let [seconds, marks, items] = [minutes * 60, 0, 0];
  for (const { item, why } of nextItems(ranked, Math.ceil(seconds / LEAST_SECONDS))) {
    if (why.seconds > seconds) break;
    seconds -= why.seconds;
    items++;
    const added = Math.max(0, why.examMarks * why.chanceAdded);
    marks += added;
    byTopic.set(item.topicId, (byTopic.get(item.topicId) ?? 0) + added);
  }
  const [most] = [...byTopic].sort(([, one], [, other]) => other - one);
  return { marks, items, most: most && most[1] > 0 ? { topicId: most[0], marks: most[1] } : null };
}
