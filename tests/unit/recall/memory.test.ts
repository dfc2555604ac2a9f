import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decays, strength } from '#lib/recall/activation.ts';
import { chanceAt, memoryOf, type Recalled, withAttempt } from '#lib/recall/memory.ts';
import { meanChance, meanOffset as meanOfWeights, noEvidence, weightsOf } from '#lib/recall/offset.ts';
import { momentsOf, outlook } from '#lib/recall/outlook.ts';
import { studyClock } from '#lib/recall/study-time.ts';
import { anyAttempts, DAY, idOf, MINUTE, recalled, START } from './builders.ts';
import { chanceByDefinition } from './by-definition.ts';

const written = { createdAt: START };
const clockOf = (attempts: readonly Recalled[]) => studyClock(attempts.map((a) => a.at));
const meanOffset = (evidence: readonly number[]) => meanOfWeights(weightsOf(evidence));
const weekly = (marks: number): Recalled[] =>
  [1, 8, 15].map((day, n) => recalled(n, START + day * DAY, { marks }));

describe('an item never attempted', () => {
  const memory = memoryOf(written, [], studyClock([]));

  it('has one presentation, its writing, and nothing known of its offset', () => {
    expect(memory.at).toEqual([START]);
    expect(memory.decays).toEqual([0.177]);
    expect(memory.offset).toEqual(noEvidence());
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
    const memory = memoryOf(written, attempts, clock);
    const times = [START, ...attempts.map((a) => a.at)];
    expect(memory.at).toEqual(times);
    expect(memory.modelAt).toEqual(times.map((at) => clock.seconds(at)));
    const expected = decays(times.map((at) => clock.seconds(at)));
    expect(memory.decays).toEqual(expected.map((one) => one.decay));
  });

  it('counts a missed attempt as study: same presentations, lower offset', () => {
    const clock = clockOf(weekly(1));
    const [full, none] = [memoryOf(written, weekly(1), clock), memoryOf(written, weekly(0), clock)];
    expect(none.at).toEqual(full.at);
    expect(none.decays).toEqual(full.decays);
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
    expect(memory.at).toEqual([START - DAY, START - DAY]);
  });

  it('orders attempts at the same moment by their ids', () => {
    const tied = [recalled(1, START + DAY, { marks: 0 }), recalled(2, START + DAY)];
    const clock = clockOf(tied);
    expect(memoryOf(written, tied.toReversed(), clock)).toEqual(memoryOf(written, tied, clock));
  });

  it('is plain data', () => {
    const memory = memoryOf(written, weekly(1), clockOf(weekly(1)));
    expect(structuredClone(memory)).toEqual(memory);
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

  it('is what its definition says, worked out presentation by presentation', () => {
    fc.assert(
      fc.property(anyAttempts, fc.nat(300 * DAY), (attempts, wait) => {
        const clock = clockOf(attempts);
        const at = START + wait;
        const chance = chanceAt(memoryOf(written, attempts, clock), clock, at);
        expect(Math.abs(chance - chanceByDefinition(START, attempts, at))).toBeLessThan(1e-9);
      }),
    );
  });
});

describe('looking ahead', () => {
  const ahead = (attempts: readonly Recalled[], now: number, last: number, aim: number) => {
    const clock = clockOf(attempts);
    const moments = momentsOf(clock, { now, last, aim });
    return { clock, found: outlook(memoryOf(written, attempts, clock), moments) };
  };

  it('gives the chance now and later without practice, and practice never lowers it', () => {
    fc.assert(
      fc.property(anyAttempts, fc.nat(300 * DAY), fc.nat(90 * DAY), fc.nat(DAY), (attempts, a, b, c) => {
        const now = START + a;
        const { clock, found } = ahead(attempts, now, now + b, now + b + c);
        const memory = memoryOf(written, attempts, clock);
        expect(found.now).toBeCloseTo(chanceAt(memory, clock, now), 12);
        expect(found.ifNone).toBeCloseTo(chanceAt(memory, clock, now + b + c), 12);
        expect(found.ifNow).toBeGreaterThanOrEqual(found.ifNone);
        expect(found.ifLast).toBeGreaterThanOrEqual(found.ifNone);
        expect(found.ifBoth).toBeGreaterThanOrEqual(found.ifNow);
      }),
    );
  });

  it('expects of practice now, and of practice at both turns, what the model gives then', () => {
    const attempts = weekly(1).slice(0, 2);
    const [now, last, aim] = [START + 15 * DAY, START + 39 * DAY, START + 40 * DAY];
    const { found } = ahead(attempts, now, last, aim);
    // The evidence that an attempt brings leaves the chance, on average, as it was: so none is counted here.
    const strengthWith = (...more: number[]) => {
      const { seconds } = clockOf(attempts);
      const times = [START, ...attempts.map((a) => a.at), ...more].map(seconds);
      return strength(decays(times), seconds(aim));
    };
    const { offset } = memoryOf(written, attempts, clockOf(attempts));
    const chance = (...more: number[]) => meanChance(weightsOf(offset), strengthWith(...more));
    expect(found.ifNow).toBeCloseTo(chance(now), 9);
    expect(found.ifLast).toBeCloseTo(chance(last), 9);
    expect(found.ifBoth).toBeCloseTo(chance(now, last), 9);
  });

  it('takes moments as no earlier than the ones before', () => {
    const [one, other] = [
      ahead([], START + DAY, START, START),
      ahead([], START + DAY, START + DAY, START + DAY),
    ];
    expect(one.found).toEqual(other.found);
  });
});

describe('a further attempt', () => {
  it('gives the memory that is worked out from scratch, with the clock grown by it', () => {
    fc.assert(
      fc.property(
        anyAttempts,
        fc.array(fc.integer({ min: 1, max: 40 * DAY }), { maxLength: 6 }),
        (first, waits) => {
          const all = [...first];
          const clock = clockOf(first);
          let memory = memoryOf(written, first, clock);
          for (const [i, wait] of waits.entries()) {
            const at = memory.at.at(-1)! + wait;
            const attempt = recalled(100 + i, at, { marks: i % 3, outOf: 2 });
            if (attempt.marks > 2) return;
            memory = withAttempt(memory, attempt, clock)!;
            expect(clock.add(at)).toBe(true);
            all.push(attempt);
          }
          expect(memory).toEqual(memoryOf(written, all, clockOf(all)));
        },
      ),
    );
  });

  it('is refused where it is not dated after the latest: worked out from scratch it counts', () => {
    const clock = clockOf(weekly(1));
    const memory = memoryOf(written, weekly(1), clock);
    expect(withAttempt(memory, recalled(9, START + 15 * DAY), clock)).toBeNull();
    expect(withAttempt(memory, recalled(9, START + 15 * DAY + 1), clock)).not.toBeNull();
  });

  it('leaves the memory before it alone', () => {
    const clock = clockOf(weekly(1));
    const memory = memoryOf(written, weekly(1), clock);
    const before = structuredClone(memory);
    withAttempt(memory, { ...recalled(9, START + 20 * DAY), id: idOf(9), seconds: 1 }, clock);
    expect(memory).toEqual(before);
  });
});
