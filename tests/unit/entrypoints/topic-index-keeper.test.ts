import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { beforeEach, expect, test, vi } from 'vitest';
import type { Clip } from '#lib/model/clip.ts';
import { changeClip } from '#lib/store/actions/clips.ts';
import { saveSyllabus, startCourse } from '#lib/store/actions/courses.ts';
import { openDeck } from '#lib/store/open.ts';
import type { TopicIndex } from '#lib/syllabus/match/index.ts';
import { suggestTopics } from '#lib/syllabus/match/index.ts';
import { topicIndexKeeper } from '../../../entrypoints/background/topic-index-keeper.ts';
import { aClip, aTopic, MORNING } from '../builders.ts';

beforeEach(() => {
  vi.stubGlobal('indexedDB', new IDBFactory());
});

const text = 'The swash is what rushes up the beach.';

async function deck() {
  const db = await openDeck();
  const { id: courseId } = await startCourse(db, { name: 'Foundation Oceanography', examDay: null }, MORNING);
  const [waves, tides] = ['Waves', 'Tides'].map((title, order) => aTopic({ courseId, order, title }));
  await saveSyllabus(db, courseId, { topics: [waves!, tides!], statements: [] });
  const clip = aClip({ courseId, text, topicIds: [waves!.id] });
  await db.put('clips', clip);
  const keeper = topicIndexKeeper();
  const put = (topicIds: string[]): Promise<Clip> =>
    keeper.learning(() => changeClip(db, clip.id, { topicIds }, MORNING));
  return { db, courseId, clip, waves: waves!, tides: tides!, keeper, put };
}
const chances = (index: TopicIndex) =>
  suggestTopics({ text: 'Swash on the beach', headings: [], title: '' }, index).suggestions.map(
    ({ topicId, chance }) => [topicId, Number(chance.toFixed(6))] as const,
  );

test('a clip that is kept or changed from here is learnt without making the index anew', async () => {
  const { db, courseId, waves, tides, keeper, put } = await deck();
  const index = await keeper.of(db, courseId);
  expect(chances(index)[0]?.[0]).toBe(waves.id);
  for (const topicIds of [[tides.id], [waves.id, tides.id], [], [waves.id]]) {
    await put(topicIds);
    expect(await keeper.of(db, courseId)).toBe(index);
    expect(chances(index)).toEqual(chances(await topicIndexKeeper().of(db, courseId)));
  }
});

test('a clip that is kept while the index is being made is learnt once', async () => {
  const { db, courseId, tides, keeper, put } = await deck();
  const [index] = await Promise.all([keeper.of(db, courseId), put([tides.id])]);
  expect(chances(index)).toEqual(chances(await topicIndexKeeper().of(db, courseId)));
});

test('what is changed elsewhere makes the index anew', async () => {
  const { db, courseId, clip, waves, tides, keeper, put } = await deck();
  const before = await keeper.of(db, courseId);
  await changeClip(db, clip.id, { topicIds: [tides.id] }, MORNING);
  const after = await keeper.of(db, courseId);
  expect(after).not.toBe(before);
  expect(chances(after)[0]?.[0]).toBe(tides.id);
  await put([waves.id]);
  await saveSyllabus(db, courseId, { topics: [tides], statements: [] });
  expect(await keeper.of(db, courseId)).not.toBe(after);
});

test('a write that fails teaches nothing and leaves later news alone', async () => {
  const { db, courseId, clip, tides, keeper } = await deck();
  const before = await keeper.of(db, courseId);
  await expect(keeper.learning(() => Promise.reject(new Error('full')))).rejects.toThrow('full');
  expect(await keeper.of(db, courseId)).toBe(before);
  await changeClip(db, clip.id, { topicIds: [tides.id] }, MORNING);
  expect(await keeper.of(db, courseId)).not.toBe(before);
});
