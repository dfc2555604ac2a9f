import { expect, test } from 'vitest';
import { topicOutlooks, weakTopics } from '#lib/recall/weak-topics.ts';
import { aRanked } from './ranked.ts';

const [A, B, C] = ['a', 'b', 'c'] as const;

test('a topic counts by the marks of its items, the weakest first', () => {
  const ranked = [
    aRanked({ topicId: A, marks: 1, chance: 0.9 }),
    aRanked({ topicId: A, marks: 3, chance: 0.5 }),
    aRanked({ topicId: B, marks: 2, chance: 0.3 }),
  ];
  const { topics, all } = topicOutlooks(ranked);
  expect(topics.map(({ topicId }) => topicId)).toEqual([B, A]);
  expect(topics.map(({ part }) => part)).toEqual([expect.closeTo(0.3), expect.closeTo(2.4 / 4)]);
  expect(all).toBeCloseTo(3 / 6);
});

test('weak are the topics below the course as a whole', () => {
  const ranked = [
    aRanked({ topicId: A, chance: 0.9 }),
    aRanked({ topicId: B, chance: 0.2 }),
    aRanked({ topicId: C, chance: 0.4 }),
  ];
  expect(weakTopics(ranked).map(({ topicId }) => topicId)).toEqual([B, C]);
});

test('where all are alike, and where there are none, none is weak', () => {
  expect(weakTopics([A, B, C].map((topicId) => aRanked({ topicId, chance: 0.1 })))).toEqual([]);
  expect(weakTopics([])).toEqual([]);
});
