import { expect, test } from 'vitest';
import type { CoursePack } from '#lib/exchange/course-pack.ts';
import type { Db } from '#lib/store/schema.ts';
import { lookAtPack, packOfCourse, takePack } from '#lib/store/actions/packs.ts';
import { readSettings } from '#lib/store/actions/courses.ts';
import { readCourseDeck } from '#lib/store/course-deck.ts';
import { readAll } from '#lib/store/read.ts';
import { putBack, readSetAside } from '#lib/store/set-aside.ts';
import { MORNING, aClip, aCourse, aLine, anAttempt, aStatement, aTopic } from '../builders.ts';
import { aTaughtCourse, packed } from '../exchange/a-pack.ts';
import { freshDeck } from './fresh-deck.ts';

const pack = packed(aTaughtCourse());
const courseId = pack.course.id;
const placed = (file: CoursePack) => ({ pack: file, packCourseId: file.course.id, ids: {} });
const take = (db: Db, file: CoursePack, at: number) => takePack(db, placed(file), at);
const everything = async (db: Awaited<ReturnType<typeof freshDeck>>) =>
  Object.fromEntries(
    await Promise.all(
      [...db.objectStoreNames].map(async (store) => [store, await db.getAll(store)] as const),
    ),
  );

test('a pack is looked at without a trace, taken in whole, and its course is the current one', async () => {
  const db = await freshDeck();
  const look = await lookAtPack(db, pack, MORNING);
  expect(look).toMatchObject({ deck: null, isOlder: false });
  expect(await db.count('courses')).toBe(0);
  await take(db, pack, MORNING);
  expect(await packOfCourse(db, courseId, pack.savedAt)).toEqual(pack);
  expect((await readSettings(db)).courseId).toBe(courseId);
});

test('an update leaves clips, lines and attempts alone, and what it takes out can be put back', async () => {
  const db = await freshDeck();
  await take(db, pack, MORNING);
  const [first, second] = pack.questions;
  await db.put('clips', aClip({ courseId, topicIds: [first!.topicId] }));
  await db.put('lines', aLine({ courseId, topicId: first!.topicId }));
  await db.put('attempts', anAttempt({ courseId, itemId: first!.id }));
  const before = await everything(db);
  const update = { ...pack, savedAt: pack.savedAt + 1, questions: [] };
  await take(db, update, MORNING + 9);
  const after = await everything(db);
  for (const store of ['clips', 'lines', 'attempts', 'topics', 'statements', 'lessons', 'settings'])
    expect(after[store]).toEqual(before[store]);
  // The first was recalled, so it stays.
  expect((await readAll(db, 'questions')).map(({ id }) => id)).toEqual([first!.id]);
  const [aside] = await readSetAside(db);
  expect(aside).toMatchObject({ store: 'questions', why: 'deleted', row: { id: second!.id } });
  expect(await putBack(db, aside!.key)).toBe(true);
  expect((await lookAtPack(db, pack, MORNING)).isOlder).toBe(true);
});

test('parts that this version does not know come through the deck to the next pack', async () => {
  const db = await freshDeck();
  await take(db, { ...pack, papers: [{ title: 'Paper 1' }] }, MORNING);
  expect(await packOfCourse(db, courseId, MORNING)).toMatchObject({ papers: [{ title: 'Paper 1' }] });
});

test('a pack that reaches into another course is refused, and nothing changes', async () => {
  const db = await freshDeck();
  await take(db, pack, MORNING);
  await db.put('topics', { ...aTopic(), id: pack.topics[0]!.id });
  const other = packed(aTaughtCourse());
  const thief = { ...other, topics: [...other.topics, pack.topics[0]!] };
  const before = await everything(db);
  await expect(take(db, thief, MORNING)).rejects.toMatchObject({ message: 'errorPackForeign' });
  expect(await everything(db)).toEqual(before);
});

test('a course that is gone cannot be saved as a pack', async () => {
  await expect(packOfCourse(await freshDeck(), courseId, MORNING)).rejects.toMatchObject({
    message: 'errorCourseGone',
  });
});

test('rows of the course that cannot be read do not stand in the way', async () => {
  const db = await freshDeck();
  await take(db, pack, MORNING);
  await db.put('questions', { ...pack.questions[0]!, courseId, marks: -1 } as never);
  await take(db, { ...pack, savedAt: 0 }, MORNING);
  const deck = (await readCourseDeck(db, courseId))!;
  expect(deck.topics).toHaveLength(pack.topics.length);
  expect((await readSetAside(db)).map(({ why }) => why)).toEqual(['unreadable']);
});

test('a pack joins a course that was begun without it: the same topics are known, and updates follow', async () => {
  const db = await freshDeck();
  const course = aCourse({ examDay: null });
  const inCourse = { courseId: course.id };
  const waves = aTopic({ ...inCourse, order: 0, code: '1', title: 'Waves' });
  const deep = aTopic({ ...inCourse, order: 1, code: '1.1', title: 'Deep water', parentId: waves.id });
  const statement = aStatement({ ...inCourse, topicId: deep.id, order: 2 });
  const own = aTopic({ ...inCourse, order: 3, code: '9', title: 'Sea ice' });
  const clip = aClip({ ...inCourse, topicIds: [deep.id], statementIds: [statement.id] });
  await db.put('courses', course);
  for (const topic of [waves, deep, own]) await db.put('topics', topic);
  await db.put('statements', statement);
  await db.put('clips', clip);
  const look = await lookAtPack(db, pack, MORNING, course.id);
  expect(look.merged.changes.topics.added.map(({ title }) => title)).toEqual(['Tides']);
  await takePack(db, look, MORNING);
  const titles = async () =>
    (await readCourseDeck(db, course.id))!.topics.map(({ id, title }) => [id, title]);
  expect(await titles()).toEqual([
    [waves.id, 'Waves'],
    [deep.id, 'Deep water'],
    [own.id, 'Sea ice'],
    [pack.topics[2]!.id, 'Tides'],
  ]);
  const [question] = (await readAll(db, 'questions')).filter(({ topicId }) => topicId === deep.id);
  expect(question).toMatchObject({ courseId: course.id, statementIds: [statement.id] });
  expect(await readAll(db, 'clips')).toEqual([clip]);
  const renamed = {
    ...pack,
    topics: pack.topics.map((one) => (one.code === '1.1' ? { ...one, title: 'Deep-water waves' } : one)),
  };
  const update = await lookAtPack(db, renamed, MORNING + 9);
  expect(update.deck?.course.id).toBe(course.id);
  await takePack(db, update, MORNING + 9);
  expect((await titles())[1]).toEqual([deep.id, 'Deep-water waves']);
  expect(await db.count('courses')).toBe(1);
});
