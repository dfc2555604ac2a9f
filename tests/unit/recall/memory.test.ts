import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decays } from '#lib/recall/activation.ts';
import { chanceAt, forecast, memoryOf, type Recalled } from '#lib/recall/memory.ts';
import { meanOffset, weightsAfter } from '#lib/recall/offset.ts';
import { studyClock } from '#lib/recall/study-time.ts';
import { anyAttempts, DAY, MINUTE, recalled, START } from './builders.ts';

const written = { createdAt: START };
const clockOf = (attempts: readonly Recalled[]) => studyClock(attempts.map((a) => a.at));
const weekly = (marks: number): Recalled[] =>
  [1, 8, 15].map((day, n) => recalled(n, START + day * DAY, { marks }));

describe('an item never attempted', () => {
  const memory = memoryOf(written, [], studyClock([]));

  it('has one presentation, its writing, and nothing known of its offset', () => {
    expect(memory.presentations).toEqual([{ at: START, decay: 0.177 }]);
    expect(memory.offset).toEqual(weightsAfter([]));
    expect(memory).toMatchObject({ attempts: 0, lastAt: null, medianSeconds: null });
  });

  it('is fresh just after it was written, and all but lost after a month', () => {
    expect(chanceAt(memory, studyClock([]), START + MINUTE)).toBeGreaterThan(0.5);
    expect(chanceAt(memory, studyClock([]), START + 30 * DAY)).toBeLessThan(0.1);
  });
});

describe('memory', () => {
  it('has a presentation for each attempt, with the decays of the model in model time', () => {
    const attempts = weekly(1);
    const clock = clockOf(attempts);
    const { presentations } = memoryOf(written, attempts, clock);
    const times = [START, ...attempts.map((a) => a.at)];
    expect(presentations.map((one) => one.at)).toEqual(times);
    const expected = decays(times.map((at) => clock.seconds(at)));
    expect(presentations.map((one) => one.decay)).toEqual(expected.map((one) => one.decay));
  });

  it('counts a missed attempt as study: same presentations, lower offset', () => {
    const clock = clockOf(weekly(1));
    const [full, none] = [memoryOf(written, weekly(1), clock), memoryOf(written, weekly(0), clock)];
    expect(none.presentations).toEqual(full.presentations);
    expect(meanOffset(none.offset)).toBeLessThan(0);
    expect(meanOffset(full.offset)).toBeGreaterThan(0);
    const untouched = memoryOf(written, [], clock);
    expect(chanceAt(none, clock, START + 16 * DAY)).toBeGreaterThan(
      chanceAt(untouched, clock, START + 16 * DAY),
    );
  });

  it('puts part marks between none and full', () => {
    const chance = (marks: number): number => {
      const clock = clockOf(weekly(marks));
      return chanceAt(memoryOf(written, weekly(marks), clock), clock, START + 20 * DAY);
    };
    expect(chance(0.5)).toBeGreaterThan(chance(0));
    expect(chance(0.5)).toBeLessThan(chance(1));
  });

  it('takes the middle of its seconds', () => {
    const seconds = (...all: number[]) =>
      memoryOf(
        written,
        all.map((s, n) => recalled(n, START + n, { seconds: s })),
        studyClock([]),
      ).medianSeconds;
    expect(seconds(900, 8, 10)).toBe(10);
    expect(seconds(8, 12)).toBe(10);
  });

  it('keeps an attempt from before the writing', () => {
    const early = [recalled(1, START - DAY)];
    const memory = memoryOf(written, early, clockOf(early));
    expect(memory.presentations.map((one) => one.at)).toEqual([START - DAY, START - DAY]);
  });

  it('orders attempts at the same moment by their ids', () => {
    const tied = [recalled(1, START + DAY, { marks: 0 }), recalled(2, START + DAY)];
    const clock = clockOf(tied);
    expect(memoryOf(written, tied.toReversed(), clock)).toEqual(memoryOf(written, tied, clock));
  });

  it('is plain data', () => {
    const memory = memoryOf(written, weekly(1), clockOf(weekly(1)));
    expect(JSON.parse(JSON.stringify(memory))).toEqual(memory);
  });

  it('is the same however the attempts are ordered', () => {
    fc.assert(
      fc.property(anyAttempts, fc.infiniteStream(fc.nat()), (attempts, keys) => {
        const shuffled = attempts
          .map((a) => ({ a, key: keys.next().value as number }))
          .toSorted((one, two) => one.key - two.key)
          .map(({ a }) => a);
        const clock = clockOf(attempts);
        expect(memoryOf(written, shuffled, clockOf(shuffled))).toEqual(memoryOf(written, attempts, clock));
      }),
    );
  });

  it('stays true in a cache while attempts at other items come later', () => {
    fc.assert(
      fc.property(anyAttempts, fc.nat(DAY), (attempts, wait) => {
        if (attempts.length === 0) return;
        const before = memoryOf(written, attempts, clockOf(attempts));
        const others = [recalled(99, (before.lastAt ?? START) + wait)];
        const after = memoryOf(written, attempts, clockOf([...attempts, ...others]));
        expect(after).toEqual(before);
      }),
    );
  });
});

describe('chance', () => {
  it('is within 0 and 1 and never rises without practice, with the clock set back too', () => {
    fc.assert(
      fc.property(
        anyAttempts,
        fc.integer({ min: -DAY, max: 300 * DAY }),
        fc.nat(300 * DAY),
        (attempts, a, b) => {
          const clock = clockOf(attempts);
          const memory = memoryOf(written, attempts, clock);
          const [sooner, later] = [
            chanceAt(memory, clock, START + a),
            chanceAt(memory, clock, START + a + b),
          ];
          expect(sooner).toBeLessThanOrEqual(1);
          expect(later).toBeGreaterThanOrEqual(0);
          expect(later).toBeLessThanOrEqual(sooner + 1e-12);
        },
      ),
    );
  });

  it('is not lowered at any later moment by practice now', () => {
    fc.assert(
      fc.property(anyAttempts, fc.nat(300 * DAY), fc.nat(300 * DAY), (attempts, a, b) => {
        const clock = clockOf(attempts);
        const memory = memoryOf(written, attempts, clock);
        const { chanceNow, without, withOne } = forecast(memory, clock, START + a, START + a + b);
        expect(withOne).toBeGreaterThanOrEqual(without);
        expect(without).toBeCloseTo(chanceAt(memory, clock, START + a + b), 12);
        expect(chanceNow).toBeCloseTo(chanceAt(memory, clock, START + a), 12);
      }),
    );
  });

  it('is raised by full marks, by as much as forecast or more', () => {
    const attempts = weekly(1).slice(0, 2);
    const clock = clockOf(attempts);
    const [now, exam] = [START + 15 * DAY, START + 40 * DAY];
    const { withOne } = forecast(memoryOf(written, attempts, clock), clock, now, exam);
    const practised = memoryOf(written, weekly(1), clock);
    expect(chanceAt(practised, clock, exam)).toBeGreaterThan(withOne);
  });

  it('is forecast for now where the later moment is past', () => {
    const clock = studyClock([]);
    const memory = memoryOf(written, [], clock);
    const late = forecast(memory, clock, START + DAY, START);
    expect(late).toEqual(forecast(memory, clock, START + DAY, START + DAY));
  });
});
