import 'fake-indexeddb/auto';
import { expect, test } from 'vitest';
import { chanceAt } from '#lib/recall/memory.ts';
import { MARKED, curveOf } from '#lib/ui/derive/curve.ts';
import { readStanding } from '#lib/ui/derive/next-up.ts';
import { anAttempt, aQuestion, MORNING } from '../../builders.ts';
import { freshDeck } from '../../store/fresh-deck.ts';
import { course, deep, waves } from '../a-course.ts';

const DAY_MS = 86_400_000;
const NOW = MORNING + 10 * DAY_MS;
const question = aQuestion({ courseId: course.id, topicId: deep.id });
const other = aQuestion({ courseId: course.id, topicId: deep.id, marks: 3 });

async function standingWith(days: number[], examDay: string | null) {
  const db = await freshDeck();
  await db.put('courses', { ...course, examDay });
  for (const topic of [waves, deep]) await db.put('topics', topic);
  for (const one of [question, other]) await db.put('questions', one);
  for (const [i, day] of days.entries()) {
    const at = MORNING + day * DAY_MS;
    await db.put('attempts', anAttempt({ courseId: course.id, itemId: question.id, at, marks: i % 2 }));
  }
  return (await readStanding(db, course.id, NOW))!;
}

const examAt = new Date('2026-04-20T09:00').getTime();

test('the curve of an item runs from its writing to the exam, with its attempts on it', async () => {
  const standing = await standingWith([1, 4], '2026-04-20');
  const curve = curveOf(standing, new Set([question.id]), NOW)!;
  expect(curve).toMatchObject({ from: MORNING, to: examAt, isForExam: true });
  expect(curve.points[0]!.at).toBe(MORNING);
  expect(curve.points.at(-1)).toEqual({ at: examAt, part: curve.then });
  const memory = standing.progress.memories.get(question.id)!;
  expect(curve.then).toBe(chanceAt(memory, standing.progress.clock, examAt));
  expect(curve.attempts.map(({ judgement }) => judgement)).toEqual(['none', 'full']);
  for (const { at, part } of curve.attempts) {
    const onCurve = curve.points.filter((point) => Math.abs(point.at - at) <= 1);
    // Just before, and lifted.
    expect(onCurve[0]!.part).toBeCloseTo(part, 6);
    expect(onCurve.at(-1)!.part).toBeGreaterThan(part);
  }
});

test('without an exam day, or with one in the past, it looks a month ahead', async () => {
  for (const examDay of [null, '2026-03-05']) {
    const curve = curveOf(await standingWith([1], examDay), new Set([question.id]), NOW)!;
    expect(curve).toMatchObject({ to: NOW + 30 * DAY_MS, isForExam: false });
  }
});

test('several items make one curve, by their marks; of very many attempts the latest are marked', async () => {
  const days = Array.from({ length: 400 }, (_, i) => i / 50);
  const curve = curveOf(await standingWith(days, '2026-04-20'), new Set([question.id, other.id]), NOW)!;
  expect(curve.attempts).toHaveLength(MARKED);
  expect(curve.points.length).toBeLessThan(1000);
  expect(curve.points.every(({ part }) => part >= 0 && part <= 1)).toBe(true);
  expect(curve.points.every(({ at }, i) => i === 0 || at >= curve.points[i - 1]!.at)).toBe(true);
});

test('items that are not there make no curve', async () => {
  expect(curveOf(await standingWith([], null), new Set(), NOW)).toBeNull();
  expect(curveOf(await standingWith([], null), new Set([deep.id]), NOW)).toBeNull();
});
