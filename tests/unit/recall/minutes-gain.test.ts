import { expect, test } from 'vitest';
import { gainOfMinutes } from '#lib/recall/minutes-gain.ts';
import { aRanked } from './ranked.ts';

test('the gains of as many items as fit into the time add up', () => {
  // Of four items of 25 seconds, two fit into a minute: 4 x 0.5 and 2 x 0.25 marks.
  const ranked = [
    aRanked({ topicId: 'a', examMarks: 4, chanceAdded: 0.5, seconds: 25 }),
    aRanked({ topicId: 'b', examMarks: 2, chanceAdded: 0.25, seconds: 25 }),
    aRanked({ topicId: 'a', examMarks: 1, chanceAdded: 0.1, seconds: 25 }),
    aRanked({ topicId: 'b', examMarks: 1, chanceAdded: 0.1, seconds: 25 }),
  ];
  expect(gainOfMinutes(ranked, 1)).toEqual({
    marks: expect.closeTo(2.5),
    items: 2,
    most: { topicId: 'a', marks: expect.closeTo(2) },
  });
  expect(gainOfMinutes(ranked, 10)).toMatchObject({ items: 4, marks: expect.closeTo(2.7) });
});

test('what is better left for later adds nothing and takes nothing away', () => {
  const ranked = [
    aRanked({ topicId: 'a', examMarks: 4, chanceAdded: 0.5 }),
    aRanked({ topicId: 'b', examMarks: 4, chanceAdded: -0.2 }),
  ];
  expect(gainOfMinutes(ranked, 10).marks).toBeCloseTo(2);
  expect(gainOfMinutes(ranked.slice(1), 10)).toEqual({ marks: 0, items: 1, most: null });
});

test('nothing to ask, nothing gained', () => {
  expect(gainOfMinutes([], 10)).toEqual({ marks: 0, items: 0, most: null });
});
