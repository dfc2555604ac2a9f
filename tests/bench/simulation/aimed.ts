import { type ItemMemory, memoryOf, withAttempt } from '#lib/recall/memory.ts';
import { ItemQueue } from '#lib/recall/item-queue.ts';
import { type Ranked, rankItems } from '#lib/recall/next-item.ts';
import { studyClock } from '#lib/recall/study-time.ts';
import type { Order, Policy } from './simulate.ts';
import { EXAM, SESSION_SECONDS, type Student, WRITTEN } from './student.ts';

/** What Plumbline asks, by its own code: ranked when a session begins, then one item after another from the queue. */
export const AIMED: Policy = { name: 'Plumbline', order: (student) => aimed(student, null) };

/** The same, but with each missed item back once after three others: what docs/method.md says of it. */
export const MISSED_BACK_SOON: Policy = {
  name: 'missed items back after three',
  order: (student) => aimed(student, 3),
};

function aimed({ items, shares }: Student, backAfter: number | null): Order {
  const clock = studyClock([]);
  const memories: ItemMemory[] = items.map(() => memoryOf({ createdAt: WRITTEN }, [], clock));
  const numbers = new Map(items.map(({ id }, i) => [id, i]));
  let queue = new ItemQueue<Ranked>([]);
  let asked: number[] = [];
  let back: { item: number; after: number }[] = [];
  return {
    begins(now) {
      const candidates = items.map((item, i) => ({ item, memory: memories[i]! }));
      const input = { candidates, shares, clock, now, examAt: EXAM, secondsADay: SESSION_SECONDS };
      queue = new ItemQueue(rankItems(input));
      [asked, back] = [[], []];
    },
    next() {
      if (back[0] && back[0].after <= asked.length) return back.shift()!.item;
      const ranked = queue.next();
      return ranked ? numbers.get(ranked.item.id)! : (back.shift()?.item ?? null);
    },
    went(item, at, isFull, seconds) {
      const { id, marks } = items[item]!;
      const attempt = { id, at, marks: isFull ? marks : 0, outOf: marks, seconds, order: 'gain' as const };
      memories[item] = withAttempt(memories[item]!, attempt, clock)!;
      clock.add(at);
      const isFirst = !asked.includes(item);
      asked.push(item);
      if (backAfter !== null && !isFull && isFirst) back.push({ item, after: asked.length + backAfter });
    },
  };
}
