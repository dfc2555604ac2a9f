import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import type { Mark } from '#lib/model/mark.ts';
import { type Marking, markingOf } from '#lib/papers/marking.ts';
import { forecastFrom, MEND, mendList } from '#lib/papers/mend.ts';
import { againstForecast, effectiveParts, gradeOf, marksByTopic } from '#lib/papers/results.ts';
import { BETA_QUANTILES } from '#tests/data/beta-quantiles.ts';
import { NEWCOMBE } from '#tests/data/newcombe.ts';
import { aMark, aPart, newId } from '../builders.ts';

const WAVES = newId();
const TIDES = newId();

interface Row {
  got: number | null;
  of: number;
  topics?: string[];
  lost?: Mark['lost'];
}
/** A sitting with one part a row. */
function sat(rows: readonly Row[]): Marking {
  const parts = rows.map(({ of, topics = [WAVES] }) => aPart({ marks: of, topicIds: topics }));
  const marks = rows.flatMap(({ got, of, lost = [] }, i) =>
    got === null ? [] : [aMark({ partId: parts[i]!.id, marks: got, outOf: of, lost })],
  );
  return markingOf(parts, marks);
}

describe('marks by topic', () => {
  it.each(NEWCOMBE)('$successes of $tried parts of one mark have Newcombe’s limits', (row) => {
    const rows = Array.from({ length: row.tried }, (_, i) => ({ got: i < row.successes ? 1 : 0, of: 1 }));
    const [waves] = marksByTopic([sat(rows)]);
    expect(waves!.interval.low).toBeCloseTo(row.low, 4);
    expect(waves!.interval.high).toBeCloseTo(row.high, 4);
  });

  it('are divided among the topics of a part, and added up over sittings', () => {
    const first = sat([
      { got: 3, of: 4 },
      { got: 2, of: 6, topics: [WAVES, TIDES] },
    ]);
    const second = sat([{ got: 1, of: 5, topics: [TIDES] }]);
    expect(marksByTopic([first, second])).toMatchObject([
      { topicId: WAVES, got: 4, outOf: 7, parts: 2 },
      { topicId: TIDES, got: 2, outOf: 8, parts: 2 },
    ]);
  });

  it('count parts rather than marks for how much they tell', () => {
    expect(effectiveParts([5, 5, 5])).toBeCloseTo(3, 12);
    expect(effectiveParts([10, 1])).toBeLessThan(1.21);
    expect(effectiveParts([])).toBe(0);
    const [one] = marksByTopic([sat([{ got: 20, of: 20 }])]);
    expect(one!.interval.low).toBeLessThan(0.25);
  });

  test('add up to those of the sitting, whatever the topics', () => {
    const row = fc
      .record({
        of: fc.integer({ min: 0, max: 12 }),
        topics: fc.uniqueArray(fc.constantFrom(WAVES, TIDES, newId())),
        cut: fc.nat(12),
        isMarked: fc.boolean(),
      })
      .map(({ of, topics, cut, isMarked }) => ({ of, topics, got: isMarked ? Math.min(of, cut) : null }));
    fc.assert(
      fc.property(fc.array(row, { maxLength: 15 }), (rows) => {
        const marking = sat(rows);
        const topics = marksByTopic([marking]);
        const sum = (of: (one: (typeof topics)[number]) => number) =>
          topics.reduce((all, one) => all + of(one), 0);
        expect(sum(({ got }) => got)).toBeCloseTo(marking.got, 9);
        expect(sum(({ outOf }) => outOf)).toBeCloseTo(marking.outOf, 9);
        for (const { got, outOf, lost, estimate, interval } of topics) {
          expect(got + [...lost.values()].reduce((all, one) => all + one, 0)).toBeCloseTo(outOf, 9);
          expect(interval.low).toBeLessThanOrEqual(estimate + 1e-12);
          expect(interval.high).toBeGreaterThanOrEqual(estimate - 1e-12);
        }
      }),
    );
  });
});

describe('a forecast', () => {
  const [waves] = marksByTopic([sat(Array.from({ length: 20 }, (_, i) => ({ got: i < 8 ? 2 : 0, of: 2 })))]);

  it.each([
    [0.9, 'below'],
    [0.5, 'within'],
    [0.1, 'above'],
  ])('of %f is held against 8 of 20', (estimate, verdict) => {
    const forecast = { estimate, low: estimate - 0.05, high: estimate + 0.05 };
    const against = againstForecast(waves!, forecast);
    expect(against.verdict).toBe(verdict);
    expect(against.difference.estimate).toBeCloseTo(0.4 - estimate, 12);
  });

  // Beta(2, 8) is what 1 of 8 makes of a flat prior, Beta(9, 3) what 8 of 10 does.
  it.each([
    [1, 8, BETA_QUANTILES[0]],
    [8, 10, BETA_QUANTILES[1]],
  ])('from %i of %i parts is a Beta distribution', (got, tried, { a, b, quantiles }) => {
    const forecast = forecastFrom({ estimate: got / tried, effective: tried });
    expect(forecast.estimate).toBeCloseTo(a / (a + b), 12);
    expect(forecast.low).toBeCloseTo(quantiles[0], 5);
    expect(forecast.high).toBeCloseTo(quantiles[4], 5);
  });
});

test.each([
  [39, null, { grade: 'C', missing: 1 }],
  [40, 'C', { grade: 'B', missing: 10 }],
  [70.5, 'A', null],
])('%f marks are grade %s', (got, grade, next) => {
  const boundaries = [
    { grade: 'A', marks: 60 },
    { grade: 'C', marks: 40 },
    { grade: 'B', marks: 50 },
  ];
  expect(gradeOf(got, boundaries)).toEqual({ grade, next });
  expect(gradeOf(got, [])).toBeNull();
});

describe('the mend list', () => {
  const weakWaves = [
    { got: 1, of: 5, lost: [{ because: 'method' as const, marks: 3 }] },
    { got: 2, of: 5, lost: [{ because: 'slip' as const, marks: 1 }] },
    { got: 5, of: 5, topics: [TIDES] },
    { got: 4, of: 5, topics: [TIDES] },
  ];

  it('names weak topics with what was lost by what, after two sittings', () => {
    expect(mendList([sat(weakWaves)]).weak).toBeNull();
    const { weak, others } = mendList([sat(weakWaves), sat(weakWaves)]);
    expect(weak).toMatchObject([{ topicId: WAVES, got: 6, outOf: 20, missing: 14, mainCause: 'method' }]);
    expect([...weak![0]!.lost]).toEqual([
      ['method', 6],
      ['slip', 2],
      ['unsaid', 6],
    ]);
    expect(weak![0]!.belowAim).toBeGreaterThanOrEqual(MEND.chance);
    expect(others).toMatchObject([{ topicId: TIDES, missing: 2 }]);
  });

  it('does not call a topic weak for one bad question, nor count a sitting that nobody marked', () => {
    const one = sat([
      { got: 0, of: 8 },
      { got: 8, of: 8, topics: [TIDES] },
    ]);
    const other = sat([{ got: 8, of: 8, topics: [TIDES] }]);
    expect(mendList([one, other])).toMatchObject({ weak: [], others: [{ topicId: WAVES, missing: 8 }] });
    expect(mendList([one, sat([{ got: null, of: 8 }])]).weak).toBeNull();
  });

  it('takes parts without a mark for lost, and says so', () => {
    const half = sat([
      { got: null, of: 5 },
      { got: null, of: 5 },
      { got: 5, of: 5, topics: [TIDES] },
    ]);
    expect(mendList([half, half]).weak).toMatchObject([{ topicId: WAVES, mainCause: 'unmarked' }]);
  });

  it('says what was lost without a topic', () => {
    expect(mendList([sat([{ got: 1, of: 4, topics: [] }])])).toMatchObject({ others: [], withoutTopic: 3 });
  });
});
