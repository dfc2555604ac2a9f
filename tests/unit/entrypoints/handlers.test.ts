import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { beforeEach, expect, test, vi } from 'vitest';
import type { Browser } from 'wxt/browser';
import { fakeBrowser } from 'wxt/testing/fake-browser';
import type { MessageData } from '#lib/model/message.ts';
import { changeSettings, saveSyllabus, startCourse } from '#lib/store/actions/courses.ts';
import { openDeck } from '#lib/store/open.ts';
import { deckHandlers } from '../../../entrypoints/background/handlers.ts';
import { aTopic, MORNING, newId } from '../builders.ts';

const sender = {} as Browser.runtime.MessageSender;

beforeEach(() => {
  fakeBrowser.reset();
  vi.stubGlobal('indexedDB', new IDBFactory());
});

const page = {
  kind: 'page' as const,
  url: 'http://127.0.0.1/waves',
  title: 'How waves travel',
  site: 'The Lagoonery',
  author: '',
  published: '',
  licence: '',
};
const passage = {
  text: 'In deep water the longer waves travel faster: the dispersion relation is ω² = gk.',
  html: '<p>In deep water the longer waves travel faster: the dispersion relation is ω² = gk.</p>',
};
const asked: MessageData<'readSlip'> = { text: passage.text, headings: ['Deep water'], page };

/** A deck with a course, if it is to have one, and its syllabus. */
async function deck({ started = true } = {}) {
  const db = await openDeck();
  if (!started) return { db, course: null!, deep: null!, tides: null! };
  const course = await startCourse(db, { name: 'Foundation Oceanography', examDay: null }, MORNING);
  const topic = (order: number, code: string, title: string, parentId: string | null = null) =>
    aTopic({ courseId: course.id, order, code, title, parentId });
  const waves = topic(0, '1', 'Waves at sea');
  const [deep, tides] = [topic(1, '1.1', 'Waves in deep water', waves.id), topic(2, '2', 'Tides')];
  await saveSyllabus(db, course.id, { topics: [tides, deep, waves], statements: [] });
  return { db, course, deep, tides };
}
const draft = (courseId: string, over: Partial<MessageData<'keepClip'>> = {}): MessageData<'keepClip'> => ({
  courseId,
  passage,
  headings: ['Deep water'],
  selectors: [{ type: 'TextQuoteSelector', exact: 'In deep water' }],
  pictures: [],
  page,
  topicIds: [],
  ownWords: 'Long ones win.',
  unclear: false,
  ...over,
});

test('without a course the slip is told so', async () => {
  await deck({ started: false });
  expect(await deckHandlers().readSlip(asked, sender)).toBeNull();
});

test('the slip is told the course, its topics in reading order and the likely ones with their words', async () => {
  const { course, deep } = await deck();
  const state = (await deckHandlers().readSlip(asked, sender))!;
  expect(state).toMatchObject({
    courseId: course.id,
    courseName: 'Foundation Oceanography',
    offSyllabus: false,
    aimedTopicId: null,
    kept: null,
  });
  expect(state.topics.map(({ code, depth }) => [code, depth])).toEqual([
    ['1', 0],
    ['1.1', 1],
    ['2', 0],
  ]);
  expect(state.suggestions[0]!.topicId).toBe(deep.id);
  expect(state.suggestions[0]!.terms.join(' ')).toMatch(/deep water/i);
});

test('a passage about something else is said to be off the syllabus', async () => {
  await deck();
  const text =
    'Knead the dough for ten minutes, let it rise in a warm kitchen, then bake the loaves until they are brown.';
  const other = { ...page, url: 'http://127.0.0.1/bread', title: 'Bread' };
  const state = await deckHandlers().readSlip({ text, headings: ['Baking'], page: other }, sender);
  expect(state).toMatchObject({ offSyllabus: true });
});

test('what was aimed at is handed over while it is in the syllabus', async () => {
  const { db, course, deep, tides } = await deck();
  await changeSettings(db, { aimedTopicId: tides.id });
  const handlers = deckHandlers();
  expect(await handlers.readSlip(asked, sender)).toMatchObject({ aimedTopicId: tides.id });
  await saveSyllabus(db, course.id, { topics: [deep, { ...tides, off: true }], statements: [] });
  const state = (await handlers.readSlip(asked, sender))!;
  expect(state.aimedTopicId).toBeNull();
  expect(state.topics.map(({ id }) => id)).not.toContain(tides.id);
});

test('a changed syllabus is suggested from at once', async () => {
  const { db, course, tides } = await deck();
  const handlers = deckHandlers();
  const text = 'The buoyancy frequency N tells how fast a displaced parcel oscillates.';
  const about = { ...asked, text, headings: [] };
  const before = (await handlers.readSlip(about, sender))!;
  const added = aTopic({ courseId: course.id, order: 3, code: '3', title: 'Buoyancy frequency' });
  await saveSyllabus(db, course.id, { topics: [tides, added], statements: [] });
  const after = (await handlers.readSlip(about, sender))!;
  expect(before.suggestions.map(({ topicId }) => topicId)).not.toContain(added.id);
  expect(after.suggestions[0]!.topicId).toBe(added.id);
});

test('a passage is kept with its source, and known again the next time, spaces aside', async () => {
  const { db, course, deep } = await deck();
  const handlers = deckHandlers();
  const { clipId } = await handlers.keepClip(draft(course.id, { topicIds: [deep.id] }), sender);
  expect(await db.getAll('clips')).toMatchObject([
    { id: clipId, ...passage, topicIds: [deep.id], ownWords: 'Long ones win.', headings: ['Deep water'] },
  ]);
  expect(await db.getAll('sources')).toMatchObject([page]);
  const again = { ...asked, text: passage.text.replaceAll(' ', '  ') };
  expect((await handlers.readSlip(again, sender))!.kept).toEqual({
    clipId,
    topicIds: [deep.id],
    ownWords: 'Long ones win.',
    unclear: false,
  });
  const elsewhere = { ...asked, page: { ...page, url: 'http://127.0.0.1/swell' } };
  expect((await handlers.readSlip(elsewhere, sender))!.kept).toBeNull();
});

test('keeping the same passage again changes it', async () => {
  const { db, course } = await deck();
  const handlers = deckHandlers();
  const first = await handlers.keepClip(draft(course.id), sender);
  const second = await handlers.keepClip(
    draft(course.id, { ownWords: 'Better words.', unclear: true }),
    sender,
  );
  expect(second).toEqual(first);
  expect(await db.getAll('clips')).toMatchObject([{ ownWords: 'Better words.', unclear: true }]);
});

test('a picture goes with its clip, as its bytes', async () => {
  const { db, course } = await deck();
  const pixel = 'iVBORw0KGgo=';
  const picture = { dataUrl: `data:image/png;base64,${pixel}`, width: 4, height: 3, alt: 'A wave train' };
  const { clipId } = await deckHandlers().keepClip(draft(course.id, { pictures: [picture] }), sender);
  const [kept] = await db.getAll('pictures');
  expect(kept).toMatchObject({ clipId, type: 'image/png', width: 4, height: 3, alt: 'A wave train' });
  expect(Buffer.from(await kept!.bytes.arrayBuffer()).toString('base64')).toBe(pixel);
  expect((await db.get('clips', clipId))!.pictureIds).toEqual([kept!.id]);
});

test('for a course that is gone nothing is kept', async () => {
  const { db } = await deck();
  const refused = deckHandlers().keepClip(draft(newId()), sender);
  await expect(refused).rejects.toMatchObject({ message: 'errorCourseGone' });
  expect([await db.count('clips'), await db.count('sources')]).toEqual([0, 0]);
});

test('a clip is changed, and nothing but what the slip may change', async () => {
  const { db, course, deep } = await deck();
  const handlers = deckHandlers();
  const { clipId } = await handlers.keepClip(draft(course.id), sender);
  const before = (await db.get('clips', clipId))!;
  const change = { topicIds: [deep.id], ownWords: 'ω² = gk says it.', unclear: true };
  expect(await handlers.changeClip({ clipId, ...change }, sender)).toEqual({ clipId });
  const after = (await db.get('clips', clipId))!;
  expect(after).toEqual({ ...before, ...change, changedAt: after.changedAt });
  expect(after.changedAt).toBeGreaterThanOrEqual(before.changedAt);
});

test('a clip that is gone is said to be', async () => {
  await deck();
  const change = { clipId: newId(), topicIds: [], ownWords: '', unclear: false };
  const refused = deckHandlers().changeClip(change, sender);
  await expect(refused).rejects.toMatchObject({ message: 'errorClipGone' });
});

test('the desk is opened on the page that was asked for', async () => {
  await deckHandlers().openDesk({ path: 'syllabus' }, sender);
  const tabs = await fakeBrowser.tabs.query({});
  expect(tabs.map(({ url }) => url)).toContain(fakeBrowser.runtime.getURL('/desk.html#/syllabus' as never));
});

test('a deck that could not be opened is tried again with the next message', async () => {
  await deck();
  const opening = vi.spyOn(indexedDB, 'open').mockImplementationOnce(() => {
    throw new DOMException('busy', 'UnknownError');
  });
  const handlers = deckHandlers();
  await expect(handlers.readSlip(asked, sender)).rejects.toMatchObject({ message: 'errorDeckUnopened' });
  expect(await handlers.readSlip(asked, sender)).toMatchObject({ courseName: 'Foundation Oceanography' });
  expect(opening).toHaveBeenCalledTimes(2);
});
