import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { OUTSIDE_SCALE, SESSION_REACH, studyClock } from '#lib/recall/study-time.ts';
import { DAY, MINUTE, START } from './builders.ts';

const anyMoments = fc.array(fc.integer({ min: 0, max: 20 * DAY }), { maxLength: 40 });

/** The definition taken literally, second by second. */
function counted(moments: number[], from: number, to: number): number {
  let sum = 0;
  for (let second = from; second < to; second += 1000) {
    const isStudy = moments.some((at) => at <= second && second < at + SESSION_REACH * 1000);
    sum += isStudy ? 1 : OUTSIDE_SCALE;
  }
  return sum;
}

describe('model age', () => {
  it('counts seconds in full within a session', () => {
    const clock = studyClock([START, START + 2 * MINUTE, START + 4 * MINUTE]);
    expect(clock.age(START, START + 4 * MINUTE)).toBeCloseTo(240, 6);
  });

  it('scales the time between sessions', () => {
    const clock = studyClock([START, START + DAY]);
    const outside = 86_400 - SESSION_REACH;
    expect(clock.age(START, START + DAY)).toBeCloseTo(SESSION_REACH + 0.025 * outside, 6);
  });

  it('scales all time where nothing was ever attempted, and before the first attempt', () => {
    expect(studyClock([]).age(START, START + DAY)).toBeCloseTo(2160, 6);
    expect(studyClock([START]).age(START - DAY, START)).toBeCloseTo(2160, 6);
  });

  it('is at least a second: at the same moment, for the future, with the clock set back', () => {
    const clock = studyClock([START, START]);
    expect(clock.age(START, START)).toBe(1);
    expect(clock.age(START + DAY, START)).toBe(1);
  });

  it('is what its definition says, counted second by second', () => {
    const seconds = fc.nat(4000).map((s) => s * 1000);
    fc.assert(
      fc.property(fc.array(seconds, { maxLength: 8 }), seconds, seconds, (moments, from, length) => {
        const age = studyClock(moments).age(from, from + length);
        expect(age).toBeCloseTo(Math.max(1, counted(moments, from, from + length)), 6);
      }),
      { numRuns: 60 },
    );
  });

  it('does not depend on the order of the attempts, nor on repeats', () => {
    fc.assert(
      fc.property(anyMoments, fc.nat(20 * DAY), fc.nat(20 * DAY), (moments, from, to) => {
        const age = studyClock(moments.toReversed().concat(moments)).age(from, to);
        expect(age).toBeCloseTo(studyClock(moments).age(from, to), 6);
      }),
    );
  });

  it('adds up, and never shrinks as time goes on', () => {
    fc.assert(
      fc.property(anyMoments, fc.nat(20 * DAY), fc.nat(DAY), fc.nat(DAY), (moments, from, a, b) => {
        const { seconds } = studyClock(moments);
        const [one, two, three] = [seconds(from), seconds(from + a), seconds(from + a + b)];
        expect(two).toBeGreaterThanOrEqual(one);
        expect(three).toBeGreaterThanOrEqual(two);
      }),
    );
  });

  it('is unchanged by attempts after the moment', () => {
    fc.assert(
      fc.property(anyMoments, fc.nat(20 * DAY), fc.nat(DAY), fc.nat(DAY), (moments, from, length, wait) => {
        const to = from + length;
        const earlier = moments.filter((at) => at <= to);
        const later = [...earlier, to + wait];
        if (earlier.length === 0) return;
        expect(studyClock(later).age(from, to)).toBeCloseTo(studyClock(earlier).age(from, to), 6);
      }),
    );
  });
});

describe('a clock that grows', () => {
  it('goes as one built with all attempts', () => {
    fc.assert(
      fc.property(
        anyMoments,
        fc.array(fc.nat(2 * DAY), { maxLength: 100 }),
        fc.nat(30 * DAY),
        (first, waits, at) => {
          const clock = studyClock(first);
          const all = [...first];
          for (const wait of waits) {
            const next = Math.max(0, ...all) + wait;
            expect(clock.add(next)).toBe(true);
            all.push(next);
          }
          const anew = studyClock(all);
          expect(clock.seconds(at)).toBe(anew.seconds(at));
          expect(clock.moments()).toEqual(anew.moments());
        },
      ),
    );
  });

  it('does not take an attempt dated before the latest', () => {
    const clock = studyClock([START, START + DAY]);
    const before = clock.seconds(START + 2 * DAY);
    expect(clock.add(START + DAY - 1)).toBe(false);
    expect(clock.seconds(START + 2 * DAY)).toBe(before);
    expect(clock.add(START + DAY)).toBe(true);
  });

  it('gives a copy of its moments', () => {
    const clock = studyClock([START]);
    clock.moments()[0] = 0;
    expect([...clock.moments()]).toEqual([START]);
  });
});
