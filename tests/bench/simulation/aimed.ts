import { memoryOf, type ItemMemory, withAttempt } from '#lib/recall/memory.ts';
import { ItemQueue } from '#lib/recall/item-queue.ts';
import { type Ranked, rankItems } from '#lib/recall/next-item.ts';
import { studyClock } from '#lib/recall/study-time.ts';
import type { Policy } from './simulate.ts';
import { EXAM, SESSION_SECONDS, WRITTEN } from './student.ts';

/** What Plumbline asks, by its own code: ranked when a session begins, then one item after another from the queue. */
export const AIMED: Policy = {
  name: 'Plumbline',
  order({ items, shares }) {
    const clock = studyClock([]);
    const memories: ItemMemory[] = items.map(() => memoryOf({ createdAt: WRITTEN }, [], clock));
    const numbers = new Map(items.map(({ id }, i) => [id, i]));
    let queue = new ItemQueue<Ranked>([]);
    return {
      begins(now) {
        const candidates = items.map((item, i) => ({ item, memory: memories[i]! }));
        queue = new ItemQueue(
          rankItems({ candidates, shares, clock, now, examAt: EXAM, secondsADay: SESSION_SECONDS }),
        );
      },
      next() {
        const ranked = queue.next();
        return ranked ? numbers.get(ranked.item.id)! : null;
      },
      went(item, at, isFull, seconds) {
        const { id, marks } = items[item]!;
        const attempt = { id, at, marks: isFull ? marks : 0, outOf: marks, seconds };
        memories[item] = withAttempt(memories[item]!, attempt, clock)!;
        clock.add(at);
      },
    };
  },
};
