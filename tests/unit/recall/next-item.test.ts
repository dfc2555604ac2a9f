import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { memoryOf, type Recalled } from '#lib/recall/memory.ts';
import {
  aimOf,
  type Candidate,
  nextItems,
  type Ranked,
  rankItems,
  type RankInput,
} from '#lib/recall/next-item.ts';
import { studyClock } from '#lib/recall/study-time.ts';
import { anyAttempts, DAY, idOf, itemOf, MINUTE, recalled, START } from './builders.ts';

const [waves, tides] = [idOf(9001), idOf(9002)];
const NOW = START + 20 * DAY;

/** Rank items, each given with its attempts. */
function ranking(items: [Candidate['item'], Recalled[]][], over: Partial<RankInput> = {}): Ranked[] {
  const clock = studyClock(items.flatMap(([, attempts]) => attempts.map((a) => a.at)));
  const candidates = items.map(([item, attempts]) => ({
    item,
    memory: memoryOf({ createdAt: START }, attempts, clock),
  }));
  const shares = new Map([
    [waves, 0.5],
    [tides, 0.5],
  ]);
  return rankItems({ candidates, shares, clock, now: NOW, examAt: NOW + 30 * DAY, ...over });
}

const ids = (ranked: readonly Ranked[]): string[] => ranked.map((one) => one.item.id);
const inTides = (n: number, over = {}) => itemOf(n, { topicId: tides, ...over });

describe('the gain of an item', () => {
  it('is its marks of the exam, times the chance added, a second', () => {
    const [first] = ranking([[itemOf(1), [recalled(1, START + DAY)]]]);
    const { gain, chanceExamAfter, chanceExamNow, why } = first!;
    expect(why).toMatchObject({
      examMarks: 50,
      seconds: 12,
      daysAhead: 30,
      isForExam: true,
      attempts: 1,
      daysSince: 19,
    });
    // A single item gets a later turn for certain, so that the 19 days since it was last seen count in full.
    expect(why.laterTurn).toEqual({ ifAsked: 1, ifLeft: 1 });
    expect(why.waited).toBeCloseTo(Math.sqrt(19), 12);
    expect(gain).toBeCloseTo(((50 * (chanceExamAfter - chanceExamNow)) / 12) * why.waited, 12);
    expect(why.chanceAdded).toBeCloseTo(chanceExamAfter - chanceExamNow, 12);
  });

  it("is larger in a topic of more of the exam's marks", () => {
    const shares = new Map([
      [waves, 0.2],
      [tides, 0.8],
    ]);
    const ranked = ranking(
      [
        [itemOf(1), []],
        [inTides(2), []],
      ],
      { shares },
    );
    expect(ids(ranked)).toEqual([idOf(2), idOf(1)]);
    expect(ranked[0]!.gain / ranked[1]!.gain).toBeCloseTo(4, 9);
  });

  it("spreads a topic's share over its items by their marks", () => {
    const ranked = ranking([
      [itemOf(1), []],
      [itemOf(2, { marks: 3 }), []],
      [inTides(3), []],
    ]);
    const examMarks = new Map(ranked.map((one) => [one.item.id, one.why.examMarks]));
    expect([1, 2, 3].map((n) => examMarks.get(idOf(n)))).toEqual([12.5, 37.5, 50]);
  });

  it('is smaller for an item that takes longer', () => {
    const ranked = ranking([
      [itemOf(1, { covers: 'long '.repeat(200) }), []],
      [itemOf(2), []],
    ]);
    expect(ids(ranked)).toEqual([idOf(2), idOf(1)]);
  });

  it('is small for what was answered just now, and for what will hold anyway', () => {
    const fresh = [recalled(1, NOW - DAY), recalled(2, NOW - MINUTE)];
    const held = Array.from({ length: 14 }, (_, n) => recalled(10 + n, START + n * DAY));
    const due = [recalled(3, START + DAY), recalled(4, START + 8 * DAY)];
    const ranked = ranking([
      [itemOf(1), fresh],
      [itemOf(2), held],
      [itemOf(3), due],
    ]);
    expect(ids(ranked)[0]).toBe(idOf(3));
    expect(ranked[0]!.gain).toBeGreaterThan(1.5 * ranked[1]!.gain);
  });
});

it('says how long ago the latest attempt was, and never in the future', () => {
  const since = (attempts: Recalled[]) => ranking([[itemOf(1), attempts]])[0]!.why.daysSince;
  expect(since([])).toBeNull();
  expect(since([recalled(1, NOW - 3 * DAY)])).toBe(3);
  expect(since([recalled(1, NOW + DAY)])).toBe(0);
});

it('puts equal gains in the order of their ids', () => {
  const equal = [3, 1, 2].map((n): [Candidate['item'], Recalled[]] => [itemOf(n), []]);
  expect(ids(ranking(equal))).toEqual([1, 2, 3].map(idOf));
});

describe('the moment aimed at', () => {
  it('is the exam, or 30 days ahead where it is unknown or past', () => {
    expect(aimOf(NOW, NOW + DAY)).toBe(NOW + DAY);
    expect(aimOf(NOW, null)).toBe(NOW + 30 * DAY);
    expect(aimOf(NOW, NOW - DAY)).toBe(NOW + 30 * DAY);
    expect(aimOf(NOW, NOW)).toBe(NOW + 30 * DAY);
  });

  it('is said in why', () => {
    expect(ranking([[itemOf(1), []]], { examAt: null })[0]!.why).toMatchObject({
      daysAhead: 30,
      isForExam: false,
    });
  });

  it('is never beyond an exam that is still to come, nor is a later turn, however close it is', () => {
    const minutesLeft = fc.oneof(
      fc.integer({ min: 1, max: 48 * 60 }),
      fc.integer({ min: 1, max: 60 * 24 * 60 }),
    );
    fc.assert(
      fc.property(anyAttempts, minutesLeft, (attempts, minutes) => {
        const examAt = NOW + minutes * MINUTE;
        const items: [Candidate['item'], Recalled[]][] = [
          [itemOf(1), attempts],
          [inTides(2), []],
        ];
        const past = items.map(([item, theirs]): [Candidate['item'], Recalled[]] => [
          item,
          theirs.filter(({ at }) => at <= NOW),
        ]);
        for (const { why, gain, chanceNow, chanceExamNow, chanceExamAfter } of ranking(past, { examAt })) {
          expect(why.isForExam).toBe(true);
          expect(NOW + why.daysAhead * DAY).toBeCloseTo(examAt, 3);
          // Less than a night and a day away, no other turn is reckoned with.
          if (minutes < 32 * 60) expect(why.laterTurn).toEqual({ ifAsked: 0, ifLeft: 0 });
          // Without another turn nothing is better left: every attempt helps, and none is put off for the gap's sake.
          if (why.laterTurn.ifLeft === 0)
            expect(chanceExamAfter).toBeGreaterThanOrEqual(chanceExamNow - 1e-12);
          for (const chance of [chanceNow, chanceExamNow, chanceExamAfter]) {
            expect(chance).toBeGreaterThanOrEqual(0);
            expect(chance).toBeLessThanOrEqual(1);
          }
          expect(Number.isFinite(gain)).toBe(true);
        }
      }),
    );
  });

  it('just before the exam gives what can still be lifted, not what is known', () => {
    const known = Array.from({ length: 14 }, (_, n) => recalled(n, START + n * DAY));
    const ranked = ranking(
      [
        [itemOf(1), known],
        [itemOf(2), []],
      ],
      { examAt: NOW + 60 * MINUTE },
    );
    expect(ids(ranked)).toEqual([idOf(2), idOf(1)]);
    expect(ranked[0]!.chanceExamAfter).toBeGreaterThan(ranked[0]!.chanceExamNow + 0.3);
  });
});

describe('what is asked', () => {
  it('leaves out items of topics that are not given', () => {
    expect(
      ids(
        ranking([
          [itemOf(1, { topicId: idOf(9009) }), []],
          [itemOf(2), []],
        ]),
      ),
    ).toEqual([idOf(2)]);
  });

  it('takes shares that are all 0 as even', () => {
    const shares = new Map([
      [waves, 0],
      [tides, 0],
    ]);
    const ranked = ranking(
      [
        [itemOf(1), []],
        [inTides(2), []],
      ],
      { shares },
    );
    expect(ranked.map((one) => one.why.examMarks)).toEqual([50, 50]);
  });

  it('is nothing of nothing', () => {
    expect(ranking([])).toEqual([]);
    expect(nextItems([], 5)).toEqual([]);
  });

  it('does not depend on the order given, and has finite gains', () => {
    const anyItems = fc.array(fc.tuple(anyAttempts, fc.boolean(), fc.integer({ min: 1, max: 5 })), {
      maxLength: 6,
    });
    const anyExam = fc.option(fc.integer({ min: -50 * DAY, max: 90 * DAY }));
    fc.assert(
      fc.property(anyItems, anyExam, (all, examIn) => {
        const items = all.map(([attempts, isTides, marks], n): [Candidate['item'], Recalled[]] => [
          itemOf(n, { marks, topicId: isTides ? tides : waves }),
          attempts,
        ]);
        const over = { examAt: examIn === null ? null : NOW + examIn };
        const ranked = ranking(items, over);
        expect(ranked.every((one) => Number.isFinite(one.gain))).toBe(true);
        expect(ids(ranking(items.toReversed(), over))).toEqual(ids(ranked));
      }),
    );
  });
});

describe('practice that is still to come', () => {
  const many = (count: number, attempts: Recalled[] = []) =>
    Array.from({ length: count }, (_, n): [Candidate['item'], Recalled[]] => [itemOf(n), attempts]);

  it('is no gain of practice now: where a later turn is certain, both chances have it', () => {
    const [one] = ranking(many(1, [recalled(1, START + DAY)]));
    const [huge] = ranking(many(1, [recalled(1, START + DAY)]), { secondsADay: 0.1 });
    expect(one!.chanceExamNow).toBeGreaterThan(huge!.chanceExamNow + 0.1);
    expect(one!.chanceExamAfter).toBeGreaterThan(one!.chanceExamNow);
  });

  it('is left out where there are far more items than turns', () => {
    const [first] = ranking(many(6000));
    expect(first!.why.laterTurn.ifAsked).toBe(0);
    expect(first!.why.laterTurn.ifLeft).toBeGreaterThan(0);
    expect(first!.why.laterTurn.ifLeft).toBeLessThan(0.5);
    expect(first!.why.waited).toBe(1);
  });

  it('leaves to the last day but one what is as well asked on the last, where all fits into both', () => {
    // 100 items of 12 s: half of them today, the others tomorrow, the day before the exam.
    const asked = (days: number) => [recalled(1, NOW - 8 * DAY), recalled(2, NOW - days * DAY)];
    const items = many(100).map(([item], n): [Candidate['item'], Recalled[]] => [item, asked(n % 2 ? 1 : 4)]);
    const over = { examAt: NOW + 1.625 * DAY };
    const ranked = ranking(items, over);
    expect(ranked[0]!.why.laterTurn.ifLeft).toBe(1);
    expect(ranked[0]!.why.laterTurn.ifAsked).toBe(0);
    expect(ranked.at(-1)!.why.chanceAdded).toBeLessThan(0);
    // On the evening before the exam nothing is left to later.
    const last = ranking(items, { examAt: NOW + 0.625 * DAY });
    expect(last.every((one) => one.gain > 0 && one.why.waited === 1)).toBe(true);
  });
});

describe('the next items', () => {
  const given = (...gains: [number, string][]): Ranked[] => {
    const [like] = ranking([[itemOf(1), []]]);
    return gains.map(([gain, topicId], n) => ({ ...like!, gain, item: itemOf(n, { topicId }) }));
  };
  const numbers = (ranked: Ranked[]): number[] => ranked.map((one) => parseInt(one.item.id.slice(-4), 16));

  it('change topic where another has at least half of the gain', () => {
    expect(numbers(nextItems(given([10, waves], [9, waves], [4.5, tides], [3, waves]), 4))).toEqual([
      0, 2, 1, 3,
    ]);
  });

  it('keep to the topic where no other has', () => {
    expect(numbers(nextItems(given([10, waves], [9, waves], [4.4, tides]), 3))).toEqual([0, 1, 2]);
  });

  it('are as many as asked for, the best first, none twice, topics mixed', () => {
    const anyRanked = fc
      .array(fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.constantFrom(waves, tides)), {
        maxLength: 20,
      })
      .map((all) => given(...all.toSorted((a, b) => b[0] - a[0])));
    fc.assert(
      fc.property(anyRanked, fc.nat(25), (ranked, n) => {
        const chosen = nextItems([...ranked, ...ranked], n);
        expect(chosen).toHaveLength(Math.min(n, ranked.length));
        expect(new Set(ids(chosen)).size).toBe(chosen.length);
        if (chosen[0]) expect(chosen[0].gain).toBe(ranked[0]!.gain);
        for (const [i, one] of chosen.entries()) {
          if (chosen[i - 1]?.item.topicId !== one.item.topicId) continue;
          const left = ranked.filter((r) => !ids(chosen.slice(0, i)).includes(r.item.id));
          const other = left.find((r) => r.item.topicId !== one.item.topicId);
          expect(other?.gain ?? -1).toBeLessThan(left[0]!.gain / 2);
        }
      }),
    );
  });
});
