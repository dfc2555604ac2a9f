import { expect, it } from 'vitest';
import { securedHistory } from '#lib/syllabus/history.ts';

const topics = [
  { topicId: 'waves', share: 0.6, asked: 3 },
  { topicId: 'tides', share: 0.4, asked: 1 },
  { topicId: 'empty', share: 0, asked: 0 },
];
const turn = (day: string, topicId: string, isSecured = true) => ({ day, topicId, isSecured });

it('is empty while nothing was ever secured', () => {
  expect(securedHistory([], topics)).toEqual([]);
});

it('grows by what each item stands for, in order of days, and falls where one is lost', () => {
  const points = securedHistory(
    [
      turn('2026-03-05', 'tides'),
      turn('2026-03-02', 'waves'),
      turn('2026-03-05', 'waves'),
      turn('2026-03-09', 'waves', false),
    ],
    topics,
  );
  expect(points.map(({ day }) => day)).toEqual(['2026-03-02', '2026-03-05', '2026-03-09']);
  [0.2, 0.8, 0.6].forEach((secured, i) => expect(points[i]!.secured).toBeCloseTo(secured, 12));
});

it('passes over topics that do not count', () => {
  expect(securedHistory([turn('2026-03-02', 'dropped')], topics)).toEqual([
    { day: '2026-03-02', secured: 0 },
  ]);
});
