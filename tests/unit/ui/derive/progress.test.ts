import { expect, test } from 'vitest';
import type { CourseDeck } from '#lib/store/course-deck.ts';
import { coverDeck, progressOf, rankDeck } from '#lib/ui/derive/progress.ts';
import { aLine, anAttempt, aQuestion, MORNING } from '../../builders.ts';
import { clipOf, course, deep, shallow, source, tides, waves } from '../a-course.ts';

const DAY = 86_400_000;
const inCourse = { courseId: course.id };
const question = aQuestion({ ...inCourse, topicId: deep.id });
const line = aLine({ ...inCourse, topicId: tides.id });

const deckOf = (over: Partial<CourseDeck> = {}): CourseDeck => ({
  course,
  topics: [waves, deep, shallow, tides],
  statements: [],
  clips: [],
  sources: [source],
  questions: [question],
  lines: [line],
  attempts: [],
  ...over,
});
const triedOn = (day: number, marks = 1) =>
  anAttempt({ ...inCourse, topicId: deep.id, itemId: question.id, at: MORNING + day * DAY, marks });

test('questions and lines are items alike; before any attempt none is attempted or secured', () => {
  const { items, memories, attempted, secured } = progressOf(deckOf(), MORNING + DAY);
  expect([...items.values()].map(({ kind, asks }) => [kind, asks])).toEqual([
    ['question', question.prompt],
    ['line', line.lead],
  ]);
  expect(memories.get(question.id)).toMatchObject({ attempts: 0, lastAt: null });
  expect([attempted.size, secured.size]).toEqual([0, 0]);
});

test('full marks on enough separate days, with the exam near, secure an item; a miss at the end undoes it', () => {
  const soon = { ...course, examDay: '2026-03-13' };
  const days = [0, 1, 2, 4, 6, 8].map((day) => triedOn(day));
  const now = MORNING + 9 * DAY;
  expect(progressOf(deckOf({ course: soon, attempts: days }), now).secured).toEqual(new Set([question.id]));
  const missed = [...days, triedOn(8.5, 0)];
  expect(progressOf(deckOf({ course: soon, attempts: missed }), now).secured.size).toBe(0);
});

test('full marks on one day only secure nothing, however many', () => {
  const soon = { ...course, examDay: '2026-03-03' };
  const attempts = Array.from({ length: 8 }, (_, i) => triedOn(i / 100));
  expect(progressOf(deckOf({ course: soon, attempts }), MORNING + DAY / 4).secured.size).toBe(0);
});

test('the ranking asks what was never recalled before what was recalled day after day', () => {
  const other = aQuestion({ ...inCourse, topicId: deep.id });
  const attempts = [0, 1, 2, 4].map((day) => triedOn(day));
  const deck = deckOf({ questions: [question, other], attempts });
  const now = MORNING + 4.5 * DAY;
  const ranked = rankDeck(deck, progressOf(deck, now), now).filter(({ item }) => item.topicId === deep.id);
  expect(ranked.map(({ item }) => item.id)).toEqual([other.id, question.id]);
});

test('it looks to the exam where its day is set and ahead, else as far as it looks without one', () => {
  const rank = (examDay: string | null) => {
    const deck = deckOf({ course: { ...course, examDay } });
    return rankDeck(deck, progressOf(deck, MORNING), MORNING)[0]!.why.isForExam;
  };
  expect([rank('2026-04-20'), rank(null), rank('2026-03-01')]).toEqual([true, false, false]);
});

test('items of a topic that is off are not asked; those of a topic above others are', () => {
  const above = aQuestion({ ...inCourse, topicId: waves.id });
  const deck = deckOf({
    topics: [waves, deep, shallow, { ...tides, off: true }],
    questions: [question, above],
  });
  const asked = rankDeck(deck, progressOf(deck, MORNING), MORNING).map(({ item }) => item.id);
  expect(asked.sort()).toEqual([question.id, above.id].sort());
});

test('coverage counts what was attempted and puts the topic with most at stake first', () => {
  const deck = deckOf({ clips: [clipOf()], attempts: [triedOn(0)] });
  const { topics } = coverDeck(deck, progressOf(deck, MORNING));
  expect(topics.map(({ topicId }) => topicId)).toEqual([tides.id, shallow.id, deep.id]);
  expect(topics[2]!.evidence).toMatchObject({ clips: 1, questions: 1, attempted: 1, secured: 0 });
});
