import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chanceAt, memoryOf, withAttempt } from '#lib/recall/memory.ts';
import { isPacked, packMemories, type PackedMemories, unpackMemories } from '#lib/recall/packed-memory.ts';
import { finish } from '#lib/recall/steps.ts';
import { studyClock } from '#lib/recall/study-time.ts';
import { anyAttempts, DAY, idOf, recalled, START } from './builders.ts';

const anyCourse = fc.array(anyAttempts, { maxLength: 6 }).map((items) => {
  const clock = studyClock(items.flat().map((a) => a.at));
  const memories = new Map(
    items.map((attempts, n) => [idOf(n), memoryOf({ createdAt: START }, attempts, clock)] as const),
  );
  return { memories, gone: new Set([idOf(99)]), clock };
});

describe('a round trip', () => {
  it('through a clone gives back the same memories and the same clock', () => {
    fc.assert(
      fc.property(anyCourse, fc.nat(300 * DAY), (course, wait) => {
        const back = finish(unpackMemories(structuredClone(finish(packMemories(course)))));
        expect([...back.memories.keys()]).toEqual([...course.memories.keys()]);
        for (const [id, memory] of course.memories) {
          expect({ ...back.memories.get(id)! }).toEqual(memory);
          const at = START + wait;
          expect(chanceAt(back.memories.get(id)!, back.clock, at)).toBe(chanceAt(memory, course.clock, at));
        }
        expect(back.gone).toEqual(course.gone);
        expect(back.clock.moments()).toEqual(course.clock.moments());
        expect(finish(packMemories(back))).toEqual(finish(packMemories(course)));
      }),
    );
  });

  it('gives memories that go on with further attempts and leave what was packed alone', () => {
    const attempts = [recalled(1, START + DAY), recalled(2, START + 3 * DAY)];
    const clock = studyClock(attempts.map((a) => a.at));
    const packed = finish(
      packMemories({
        memories: new Map([
          [idOf(1), memoryOf({ createdAt: START }, attempts, clock)],
          [idOf(2), memoryOf({ createdAt: START }, [], clock)],
        ]),
        gone: new Set(),
        clock,
      }),
    );
    const before = structuredClone(packed);
    const back = finish(unpackMemories(packed));
    const next = recalled(3, START + 9 * DAY, { marks: 0 });
    const after = withAttempt(back.memories.get(idOf(1))!, next, back.clock);
    back.clock.add(next.at);
    expect(after).toEqual(memoryOf({ createdAt: START }, [...attempts, next], back.clock));
    expect(packed).toEqual(before);
  });
});

describe('what does not fit is not unpacked', () => {
  const clock = studyClock([START]);
  const packed = finish(
    packMemories({
      memories: new Map([[idOf(1), memoryOf({ createdAt: START }, [recalled(1, START)], clock)]]),
      gone: new Set(),
      clock,
    }),
  );
  const changed: [string, unknown][] = [
    ['nothing', undefined],
    ['a text', 'packed'],
    ['another version', { ...packed, version: packed.version + 1 }],
    ['an id too many', { ...packed, ids: [...packed.ids, idOf(2)] }],
    ['an item without a presentation', { ...packed, counts: Uint32Array.of(0) }],
    ['no word on what is gone', { ...packed, gone: undefined }],
    ['a missing array', { ...packed, decays: undefined }],
    ['a plain array', { ...packed, taken: [...packed.taken] }],
    ['full marks of another kind', { ...packed, full: Float64Array.of(3) }],
    ['too few full marks', { ...packed, full: new Uint8Array(0) }],
    ['a short array', { ...packed, offsets: packed.offsets.slice(1) } satisfies PackedMemories],
  ];

  it.each(changed)('%s', (_, it) => expect(isPacked(it)).toBe(false));

  it('but what does is', () => expect(isPacked(packed)).toBe(true));
});
