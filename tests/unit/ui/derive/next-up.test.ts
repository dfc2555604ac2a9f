import 'fake-indexeddb/auto';
import { expect, test } from 'vitest';
import type { Db } from '#lib/store/schema.ts';
import { QUEUE_LENGTH, readStanding } from '#lib/ui/derive/next-up.ts';
import { reasonOf } from '#lib/ui/derive/why.ts';
import { aQuestion, MORNING, newId } from '../../builders.ts';
import { freshDeck } from '../../store/fresh-deck.ts';
import { course, deep, shallow, tides, waves } from '../a-course.ts';

async function deckWithQuestions(count: number): Promise<Db> {
  const db = await freshDeck();
  await db.put('courses', course);
  for (const topic of [waves, deep, shallow, tides]) await db.put('topics', topic);
  for (let i = 0; i < count; i++) {
    const topicId = [deep, shallow, tides][i % 3]!.id;
    await db.put('questions', aQuestion({ courseId: course.id, topicId, prompt: `Question ${i}?` }));
  }
  return db;
}

test('what gains most now is kept for the next opening, with topics mixed', async () => {
  const db = await deckWithQuestions(6);
  const standing = await readStanding(db, course.id, MORNING);
  const cache = await db.get('nextUp', course.id);
  expect(cache).toMatchObject({ courseId: course.id, at: MORNING });
  expect(cache!.items).toHaveLength(6);
  const [best] = standing!.ranked;
  expect(cache!.items[0]).toEqual({ kind: 'question', id: best!.item.id, reason: reasonOf(best!, MORNING) });
  const topics = cache!.items.map(({ id }) => standing!.progress.items.get(id)!.topicId);
  expect(topics.slice(0, 2)).toEqual([tides.id, deep.id]);
});

test('the cache holds no more than a round may ask', async () => {
  const db = await deckWithQuestions(QUEUE_LENGTH + 5);
  const standing = await readStanding(db, course.id, MORNING);
  expect(standing!.ranked).toHaveLength(QUEUE_LENGTH + 5);
  expect((await db.get('nextUp', course.id))!.items).toHaveLength(QUEUE_LENGTH);
});

test('without anything to ask the cache is empty, not missing', async () => {
  const db = await deckWithQuestions(0);
  expect((await readStanding(db, course.id, MORNING))!.ranked).toEqual([]);
  expect((await db.get('nextUp', course.id))!.items).toEqual([]);
});

test('a course that is not there has no standing and leaves no cache', async () => {
  const db = await deckWithQuestions(1);
  expect(await readStanding(db, newId(), MORNING)).toBeUndefined();
  expect(await db.count('nextUp')).toBe(0);
});
