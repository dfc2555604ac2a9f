import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import {
  addNewer,
  courseMemoryOf,
  type CourseMemory,
  fitsDeck,
  type RecalledItem,
} from '#lib/recall/course-memory.ts';
import { memoryOf } from '#lib/recall/memory.ts';
import { packMemories, unpackMemories } from '#lib/recall/packed-memory.ts';
import { finish } from '#lib/recall/steps.ts';
import { anyAttempts, DAY, idOf, recalled, START } from './builders.ts';

/** Items 0 to 3 were written a day apart, others are not in the deck. */
const writtenAt = (id: string): number | undefined => {
  const n = [0, 1, 2, 3].find((one) => idOf(one) === id);
  return n === undefined ? undefined : START + n * DAY;
};
const anyHistory = fc.array(anyAttempts, { maxLength: 6 }).map((items) =>
  items
    .flatMap((attempts, n) => attempts.map((one) => ({ ...one, itemId: idOf(n) })))
    .map((one, n): RecalledItem => ({ ...one, id: idOf(1000 + n) }))
    .sort((a, b) => a.at - b.at),
);
const plain = ({ memories, gone, clock }: CourseMemory) => ({
  memories: new Map([...memories].sort()),
  gone: new Set([...gone].sort()),
  moments: clock.moments(),
});
const at = (itemId: string, moment: number, n = moment) => ({ ...recalled(n, moment), itemId });

test('holds the memory of each item that was tried, and the others apart', () => {
  fc.assert(
    fc.property(anyHistory, (history) => {
      const { memories, gone, clock } = finish(courseMemoryOf(history, writtenAt));
      for (const [id, theirs] of Map.groupBy(history, ({ itemId }) => itemId)) {
        const createdAt = writtenAt(id);
        if (createdAt === undefined) expect(gone.has(id)).toBe(true);
        else expect(memories.get(id)).toEqual(memoryOf({ createdAt }, theirs, clock));
      }
    }),
  );
});

test('packed at any moment, and with what came since, it is the same as from scratch, or says that it cannot', () => {
  fc.assert(
    fc.property(anyHistory, fc.nat(60), (history, cut) => {
      const kept = finish(packMemories(finish(courseMemoryOf(history.slice(0, cut), writtenAt))));
      const course = finish(unpackMemories(structuredClone(kept)));
      const newer = history.slice(cut);
      const keys = newer.map(({ itemId, at }) => `${itemId} ${at}`);
      const isTied =
        newer[0] !== undefined && cut > 0 && newer[0].at === history[Math.min(cut, history.length) - 1]!.at;
      const added = finish(addNewer(course, newer, writtenAt));
      if (added) expect(plain(course)).toEqual(plain(finish(courseMemoryOf(history, writtenAt))));
      else expect(isTied || new Set(keys).size < keys.length).toBe(true);
      if (isTied) expect(added).toBe(false);
    }),
  );
});

describe('attempts that cannot be added', () => {
  const course = () => finish(courseMemoryOf([at(idOf(0), START + DAY)], writtenAt));

  it.each([
    ['dated before another', [at(idOf(1), START)]],
    ['dated at the moment of another', [at(idOf(1), START + DAY, 7)]],
    ['two at one item at one moment', [at(idOf(0), START + 2 * DAY, 7), at(idOf(0), START + 2 * DAY, 8)]],
    ['out of order', [at(idOf(0), START + 3 * DAY), at(idOf(1), START + 2 * DAY)]],
  ])('%s', (_, newer) => expect(finish(addNewer(course(), newer, writtenAt))).toBe(false));

  it('but two items at one moment can', () => {
    const newer = [at(idOf(0), START + 2 * DAY, 7), at(idOf(1), START + 2 * DAY, 8)];
    expect(finish(addNewer(course(), newer, writtenAt))).toBe(true);
  });
});

describe('it fits the deck', () => {
  const course = finish(courseMemoryOf([at(idOf(0), START + DAY), at(idOf(8), START + 2 * DAY)], writtenAt));

  it('while items are new or deleted', () => {
    expect(fitsDeck(course, writtenAt)).toBe(true);
    expect(fitsDeck(course, () => undefined)).toBe(true);
  });

  it('not where one came back', () => {
    expect(fitsDeck(course, (id) => (id === idOf(8) ? START : writtenAt(id)))).toBe(false);
  });

  it('not where one was written at another time', () => {
    expect(fitsDeck(course, () => START - DAY)).toBe(false);
  });
});
