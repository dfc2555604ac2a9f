import { expect, test } from 'vitest';
import { peopleIn, toChase } from '#lib/syllabus/chase.ts';
import { aLesson, aTopic, MORNING } from '../builders.ts';

const [waves, tides] = [aTopic({ order: 0 }), aTopic({ order: 1 })];
const places = new Map([
  [waves!.id, 0],
  [tides!.id, 1],
]);
const TODAY = '2026-03-10';
const missing = (title: string, wantedBy: string | null, over = {}) =>
  aLesson({ topicId: waves!.id, title, wantedBy, ...over });

test('what is missing stands by its day: overdue first, what has no day last', () => {
  const lessons = [
    missing('no day', null),
    missing('later', '2026-04-01'),
    missing('today', TODAY),
    missing('overdue', '2026-03-09'),
    missing('long overdue', '2025-12-31'),
    missing('held', '2026-03-01', { held: true }),
  ];
  expect(toChase(lessons, places, TODAY).map(({ lesson, isOverdue }) => [lesson.title, isOverdue])).toEqual([
    ['long overdue', true],
    ['overdue', true],
    ['today', false],
    ['later', false],
    ['no day', false],
  ]);
});

test('within a day it follows the syllabus, then the order of entering', () => {
  const lessons = [
    missing('of tides', TODAY, { topicId: tides!.id }),
    missing('second', TODAY, { createdAt: MORNING + 1 }),
    missing('first', TODAY),
  ];
  const titles = toChase(lessons, places, TODAY).map(({ lesson }) => lesson.title);
  expect(titles).toEqual(['first', 'second', 'of tides']);
});

test('what stands under a topic that does not count is not chased', () => {
  expect(toChase([missing('off', TODAY, { topicId: aTopic().id })], places, TODAY)).toEqual([]);
});

test('people are named once each, in order; nobody is no person', () => {
  const lessons = ['Tide teacher', '', 'Course office', 'Tide teacher'].map((wantedFrom) =>
    missing('x', null, { wantedFrom }),
  );
  expect(peopleIn(toChase(lessons, places, TODAY))).toEqual(['Course office', 'Tide teacher']);
});
