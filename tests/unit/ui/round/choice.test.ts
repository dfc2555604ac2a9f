import 'fake-indexeddb/auto';
import { beforeAll, expect, test } from 'vitest';
import { readStanding, type Standing } from '#lib/ui/derive/next-up.ts';
import { type Scope, itemsOf, planOf, withAbove, withBelow } from '#lib/ui/round/choice.ts';
import { aLine, anAttempt, aQuestion, MORNING } from '../../builders.ts';
import { freshDeck } from '../../store/fresh-deck.ts';
import { clipOf, course, deep, shallow, tides, waves } from '../a-course.ts';

const inCourse = { courseId: course.id };
const unclear = clipOf({ unclear: true });
const clear = clipOf();
const questions = [
  aQuestion({ ...inCourse, topicId: tides.id, prompt: 'tides 1', createdAt: MORNING, answer: 'The moon.' }),
  aQuestion({ ...inCourse, topicId: deep.id, prompt: 'deep 2', createdAt: MORNING + 9, answer: '42' }),
  aQuestion({ ...inCourse, topicId: deep.id, prompt: 'deep 1', createdAt: MORNING + 5, clipId: unclear.id }),
  aQuestion({ ...inCourse, topicId: shallow.id, prompt: 'shallow 1', clipId: clear.id }),
];
const lines = [
  aLine({ ...inCourse, topicId: deep.id, lead: 'deep line 2', order: 7 }),
  aLine({ ...inCourse, topicId: deep.id, lead: 'deep line 1', order: 3, clipId: unclear.id }),
  aLine({ ...inCourse, topicId: waves.id, lead: 'waves line', order: 9 }),
];
const NOTES = ['waves line', 'deep line 1', 'deep line 2', 'deep 1', 'deep 2', 'shallow 1', 'tides 1'];

let standing: Standing;
beforeAll(async () => {
  const db = await freshDeck();
  await db.put('courses', course);
  for (const topic of [waves, deep, shallow, tides]) await db.put('topics', topic);
  for (const clip of [unclear, clear]) await db.put('clips', clip);
  for (const question of questions) await db.put('questions', question);
  for (const line of lines) await db.put('lines', line);
  // What stands under tides is known well.
  for (let day = 0; day < 5; day++)
    await db.put(
      'attempts',
      anAttempt({ ...inCourse, topicId: tides.id, itemId: questions[0]!.id, at: MORNING + day * 86_400_000 }),
    );
  standing = (await readStanding(db, course.id, NOW))!;
});

const NOW = MORNING + 5 * 86_400_000;
const gain = { order: 'gain', minutes: 2, turned: false } as const;
const asks = (scope: Scope) => itemsOf(standing, scope).map(({ item }) => item.asks);
const plan = (over: Partial<Parameters<typeof planOf>[1]>, random = () => 0.5) =>
  planOf(standing, { scope: { of: 'all' }, ...gain, ...over }, NOW, random);

test.each<[string, Scope, string[]]>([
  ['everything', { of: 'all' }, NOTES],
  ['a topic with those below', { of: 'topic', topicId: waves.id }, NOTES.slice(0, 6)],
  ['a topic', { of: 'topic', topicId: deep.id }, ['deep line 1', 'deep line 2', 'deep 1', 'deep 2']],
  ['what is marked unclear', { of: 'unclear' }, ['deep line 1', 'deep 1']],
  ['weak topics: not the one that is known', { of: 'weak' }, NOTES.slice(0, 6)],
])('%s', (_name, scope, expected) => {
  expect(asks(scope).toSorted()).toEqual(expected.toSorted());
  // The best first.
  const gains = itemsOf(standing, scope).map((one) => one.gain);
  expect(gains).toEqual(gains.toSorted((a, b) => b - a));
});

test('under a topic that is unclear everything is unclear, and what stands below it', () => {
  const { deck } = standing;
  const topics = deck.topics.map((topic) => ({ ...topic, unclear: topic.id === tides.id }));
  const here = { ...standing, deck: { ...deck, topics } };
  const asked = itemsOf(here, { of: 'unclear' }).map(({ item }) => item.asks);
  expect(asked.toSorted()).toEqual(['deep 1', 'deep line 1', 'tides 1']);
});

test('as the notes stand: by topic, lines in their order, then questions by age; and its opposites', () => {
  const order = (one: 'forward' | 'backToFront' | 'outOfOrder', random?: () => number) =>
    plan({ order: one }, random).queue.map(({ item }) => item.asks);
  expect(order('forward')).toEqual(NOTES);
  expect(order('backToFront')).toEqual(NOTES.toReversed());
  let seed = 1;
  const mixed = order('outOfOrder', () => (seed = (seed * 16_807) % 2_147_483_647) / 2_147_483_647);
  expect(mixed.toSorted()).toEqual(NOTES.toSorted());
  for (const [i, one] of mixed.slice(1).entries())
    expect(NOTES.indexOf(one)).not.toBe(NOTES.indexOf(mixed[i]!) + 1);
});

test('every item of a round has its reason, and none comes twice', () => {
  for (const order of ['gain', 'forward', 'backToFront', 'outOfOrder'] as const) {
    const { queue } = plan({ order });
    expect(new Set(queue.map(({ item }) => item.id)).size).toBe(NOTES.length);
    for (const { reason } of queue) expect(reason.examMarks).toBeGreaterThan(0);
  }
});

test('from the answer’s side: questions whose answer leads back to them, and no lines', () => {
  const { turned, queue } = plan({ turned: true });
  const names = queue.filter(({ item }) => turned.has(item.id)).map(({ item }) => item.asks);
  expect(names.toSorted()).toEqual(['deep 1', 'shallow 1', 'tides 1']);
  expect(plan({}).turned.size).toBe(0);
});

test('below a topic and above items', () => {
  expect([...withBelow(standing.deck, waves.id)]).toEqual([waves.id, deep.id, shallow.id]);
  const items = itemsOf(standing, { of: 'topic', topicId: shallow.id });
  expect([...withAbove(standing.deck, items)].toSorted()).toEqual([shallow.id, waves.id].toSorted());
});
