import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import {
  allowedMillis,
  endsAt,
  millisLeft,
  minutesPerMark,
  positionAt,
  restMillis,
  type Stretch,
  warningsAt,
  workedMillis,
} from '#lib/papers/clock.ts';
import { aSitting, MORNING } from '../builders.ts';

const MINUTE = 60_000;
const at = (minutes: number): number => MORNING + minutes * MINUTE;

describe('the time of a sitting', () => {
  // Extra time of 25 % is the access arrangement that is commonly named (JCQ); 60 minutes with it are 75.
  it.each([
    [60, 25, 75],
    [60, 0, 60],
    [90, 25, 112.5],
    [60, 100, 120],
  ])('%i minutes with %i %% extra are %f', (minutes, extraPercent, all) => {
    expect(allowedMillis({ minutes, extraPercent })).toBe(all * MINUTE);
    expect(endsAt(aSitting({ minutes, extraPercent }), [], MORNING)).toBe(at(all));
  });

  it('stands while a rest break runs, and moves on by its length when it is over', () => {
    const sitting = aSitting();
    const running = [{ from: at(10), to: null }];
    expect(millisLeft(sitting, running, at(10))).toBe(50 * MINUTE);
    expect(millisLeft(sitting, running, at(17))).toBe(50 * MINUTE);
    const over = [{ from: at(10), to: at(17) }];
    expect(endsAt(sitting, over, at(30))).toBe(at(67));
    expect(workedMillis(sitting, over, at(30))).toBe(23 * MINUTE);
  });

  it('counts a rest that two windows recorded once, and none before the start', () => {
    const rests = [
      { from: at(10), to: at(20) },
      { from: at(12), to: at(15) },
      { from: at(15), to: at(22) },
    ];
    expect(restMillis(rests, MORNING, at(60))).toBe(12 * MINUTE);
    expect(restMillis([{ from: at(-9), to: at(-2) }], MORNING, at(60))).toBe(0);
  });

  it('goes below nothing when it is up', () => {
    expect(millisLeft(aSitting(), [], at(63))).toBe(-3 * MINUTE);
    expect(workedMillis(aSitting(), [], at(63))).toBe(60 * MINUTE);
  });

  const stretches = fc.array(
    fc
      .record({ from: fc.integer({ min: -10, max: 100 }), length: fc.nat(30) })
      .map(({ from, length }): Stretch => ({ from: at(from), to: at(from + length) })),
    { maxLength: 5 },
  );
  test('work, rest and what is left add up, in whatever order rests are listed', () => {
    fc.assert(
      fc.property(stretches, fc.nat(200), (rests, minute) => {
        const sitting = aSitting({ minutes: 300 });
        const [worked, rested] = [
          workedMillis(sitting, rests, at(minute)),
          restMillis(rests, MORNING, at(minute)),
        ];
        expect(worked + rested).toBe(minute * MINUTE);
        expect(worked + millisLeft(sitting, rests, at(minute))).toBe(allowedMillis(sitting));
        expect(restMillis(rests.toReversed(), MORNING, at(minute))).toBe(rested);
      }),
    );
  });
});

describe('time against marks', () => {
  const parts = [{ marks: 10 }, { marks: 0 }, { marks: 20 }, { marks: 10 }];

  it.each([
    [0, 0, 0],
    [14, 9.3333, 0],
    [15, 10, 2],
    [44, 29.3333, 2],
    [45, 30, 3],
    [60, 40, 3],
    [90, 40, 3],
  ])('after %i of 60 minutes %f of 40 marks are behind', (minutes, marks, part) => {
    const position = positionAt(parts, minutes * MINUTE, 60 * MINUTE);
    expect(position.marks).toBeCloseTo(marks, 3);
    expect(position.part).toBe(part);
  });

  it('knows nothing of a paper without parts', () => {
    expect(positionAt([], MINUTE, 60 * MINUTE)).toEqual({ marks: 0, part: -1 });
  });

  it('takes minutes a mark from the paper', () => {
    expect(minutesPerMark(90, 60)).toBe(1.5);
    expect(minutesPerMark(90, 0)).toBeNull();
  });
});

describe('warnings', () => {
  const CHOSEN = [30, 5, 10];
  const look = (done: number[], left: number, allowed = 60) =>
    warningsAt(CHOSEN, done, left * MINUTE, allowed * MINUTE);

  it('are given once', () => {
    expect(look([], 31)).toEqual({ give: null, done: [] });
    expect(look([], 30)).toEqual({ give: 30, done: [30] });
    expect(look([30], 29)).toEqual({ give: null, done: [30] });
    expect(look([30], 9.9)).toEqual({ give: 10, done: [30, 10] });
  });

  it('that passed while the page was closed are given by the latest', () => {
    expect(look([], 4)).toEqual({ give: 5, done: [30, 5, 10] });
    expect(look([30, 5, 10], 3).give).toBeNull();
  });

  it('are not given for longer than there is, nor when time is up', () => {
    expect(look([], 20, 20)).toEqual({ give: null, done: [] });
    expect(look([], 0).give).toBeNull();
  });

  test('come once each and never backwards, however the clock is looked at', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: -5, max: 60, noNaN: true }), { maxLength: 40 }), (lefts) => {
        let done: number[] = [];
        const given: number[] = [];
        for (const left of lefts) {
          const next = look(done, left);
          done = next.done;
          if (next.give !== null) given.push(next.give);
        }
        expect(given).toEqual([...new Set(given)].sort((a, b) => b - a));
      }),
    );
  });
});
