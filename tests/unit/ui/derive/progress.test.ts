import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { CourseDeck } from '#lib/store/course-deck.ts';
import { coverDeck, progressAfter, progressOf, rankDeck, rankedAfter } from '#lib/ui/derive/progress.ts';
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
  lessons: [],
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

describe('after one more attempt', () => {
  const questions = [question, aQuestion({ ...inCourse, topicId: tides.id })];
  const anyTries = fc.array(
    fc.record({ day: fc.nat(40), which: fc.nat(2), marks: fc.nat(1), minute: fc.nat(600) }),
    { maxLength: 20 },
  );

  test('all is as if worked out from scratch', () => {
    fc.assert(
      fc.property(anyTries, (tries) => {
        const ids = [...questions, line].map(({ id }) => id);
        const attempts = tries
          .map(({ day, which, marks, minute }) =>
            anAttempt({ ...inCourse, itemId: ids[which]!, at: MORNING + day * DAY + minute * 60_000, marks }),
          )
          .sort((a, b) => a.at - b.at);
        const now = MORNING + 41 * DAY;
        let deck = deckOf({ questions });
        let progress = progressOf(deck, now);
        let ranked = rankDeck(deck, progress, now);
        for (const attempt of attempts) {
          const after = progressAfter(deck, progress, attempt, now);
          deck = { ...deck, attempts: [...deck.attempts, attempt] };
          progress = after ?? progressOf(deck, now);
          ranked = rankedAfter(ranked, { deck, progress }, attempt.itemId, now);
        }
        const anew = progressOf(deck, now);
        expect(progress.memories).toEqual(anew.memories);
        expect([progress.secured, progress.attempted, progress.counted]).toEqual([
          anew.secured,
          anew.attempted,
          anew.counted,
        ]);
        expect(new Set(ranked.map(({ item }) => item.id))).toEqual(new Set(ids));
      }),
      { numRuns: 40 },
    );
  });

  test('one dated before another changes nothing and says so', () => {
    const deck = deckOf({ attempts: [triedOn(5)] });
    const progress = progressOf(deck, MORNING + 6 * DAY);
    const before = structuredClone(progress.memories);
    expect(progressAfter(deck, progress, triedOn(3), MORNING + 6 * DAY)).toBeNull();
    const other = anAttempt({ ...inCourse, itemId: line.id, at: MORNING + 3 * DAY });
    expect(progressAfter(deck, progress, other, MORNING + 6 * DAY)).toBeNull();
    expect(progress.memories).toEqual(before);
    expect(progress.counted.size).toBe(1);
  });

  test('the item that was tried moves to its new place among the others', () => {
    const now = MORNING + DAY;
    const deck = deckOf({ questions });
    const progress = progressOf(deck, now);
    const ranked = rankDeck(deck, progress, now);
    const attempt = anAttempt({ ...inCourse, itemId: ranked[0]!.item.id, at: now });
    const after = progressAfter(deck, progress, attempt, now)!;
    const moved = rankedAfter(ranked, { deck, progress: after }, attempt.itemId, now + 60_000);
    expect(moved.at(-1)!.item.id).toBe(ranked[0]!.item.id);
    const gains = moved.map(({ gain }) => gain);
    expect(gains).toEqual(gains.toSorted((a, b) => b - a));
  });
});
