import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inOrder, ItemQueue, type Queued, SWITCH_RATIO } from '#lib/recall/item-queue.ts';
import { idOf } from './builders.ts';

const one = (n: number, gain: number, topic = 1): Queued => ({
  item: { id: idOf(n), topicId: idOf(9000 + topic) },
  gain,
});
const numbers = (queue: ItemQueue<Queued>): number[] => {
  const all: number[] = [];
  for (let next = queue.next(); next; next = queue.next()) all.push(parseInt(next.item.id.slice(-4), 16));
  return all;
};

/** The rule as it is said, by looking through all that are left. */
function byTheRule(ranked: readonly Queued[]): Queued[] {
  const left = [...ranked];
  const chosen: Queued[] = [];
  while (left.length > 0) {
    const enough = left[0]!.gain * SWITCH_RATIO;
    const last = chosen.at(-1)?.item.topicId;
    const other = left.findIndex((it) => it.gain >= enough && it.item.topicId !== last);
    const i = left[0]!.item.topicId === last && other > 0 ? other : 0;
    chosen.push(...left.splice(i, 1));
  }
  return chosen;
}

it('gives all items as the rule says, looked up in all that are left', () => {
  const anyItem = fc.tuple(fc.double({ min: -1, max: 1, noNaN: true }), fc.integer({ min: 1, max: 4 }));
  fc.assert(
    fc.property(fc.array(anyItem, { maxLength: 40 }), (all) => {
      const ranked = all.map(([gain, topic], n) => one(n, gain, topic)).sort(inOrder);
      const queue = new ItemQueue(ranked);
      expect(ranked.map(() => queue.next())).toEqual(byTheRule(ranked));
      expect(queue.next()).toBeNull();
    }),
  );
});

describe('an item', () => {
  it('comes once, though it was ranked twice', () => {
    expect(numbers(new ItemQueue([one(1, 3), one(2, 2), one(1, 1)]))).toEqual([1, 2]);
  });

  it('comes again where it was missed, by the gain that it has then', () => {
    const queue = new ItemQueue([one(1, 9), one(2, 8), one(3, 7), one(4, 1)]);
    expect(queue.next()).toMatchObject({ gain: 9 });
    queue.putBack(one(1, 5));
    expect(numbers(queue)).toEqual([2, 3, 1, 4]);
  });

  it('changes its place with its gain, but does not come back by it', () => {
    const queue = new ItemQueue([one(1, 9), one(2, 8), one(3, 7)]);
    queue.next();
    queue.update(one(3, 8.5));
    queue.update(one(1, 10));
    expect(numbers(queue)).toEqual([3, 2]);
  });

  it('that is new comes in at its place, of a new topic too', () => {
    const queue = new ItemQueue([one(1, 9), one(2, 5)]);
    queue.update(one(3, 7, 2));
    queue.update(one(4, 6));
    expect(numbers(queue)).toEqual([1, 3, 4, 2]);
  });
});
