import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { beforeEach, expect, test, vi } from 'vitest';
import type { Browser } from 'wxt/browser';
import { fakeBrowser } from 'wxt/testing/fake-browser';
import type { MessageData } from '#lib/model/message.ts';
import { FRAGMENT_OF } from '#lib/model/selector.ts';
import { startCourse } from '#lib/store/actions/courses.ts';
import { openDeck } from '#lib/store/open.ts';
import { readAll } from '#lib/store/read.ts';
import { deckHandlers } from '../../../entrypoints/background/handlers.ts';
import { MORNING } from '../builders.ts';

const sender = {} as Browser.runtime.MessageSender;

beforeEach(() => {
  fakeBrowser.reset();
  vi.stubGlobal('indexedDB', new IDBFactory());
});

const page = {
  kind: 'pdf' as const,
  url: `ni:///sha-256;${'A'.repeat(43)}`,
  title: 'Problem sheet',
  site: '',
  author: '',
  published: '',
  licence: '' as const,
};

/** A frame of the sheet, with the words under it. */
const frame = (courseId: string, place: string, text: string): MessageData<'keepClip'> => ({
  courseId,
  passage: { text, html: '<figure><img data-picture="0"></figure>' },
  headings: [],
  selectors: [{ type: 'FragmentSelector', conformsTo: FRAGMENT_OF.pdf, value: place }],
  pictures: [{ dataUrl: 'data:image/png;base64,AAAA', width: 2, height: 2, alt: text }],
  page,
  topicIds: [],
  ownWords: '',
  unclear: false,
});

test.each(['', 'Figure 1. A swell.'])('two frames are two clips, both with the words “%s”', async (text) => {
  const db = await openDeck();
  const course = await startCourse(db, { name: 'Oceanography', examDay: null }, MORNING);
  const { keepClip } = deckHandlers();
  const first = await keepClip(frame(course.id, 'page=1&viewrect=1,2,3,4', text), sender);
  const second = await keepClip(frame(course.id, 'page=2&viewrect=1,2,3,4', text), sender);
  expect(second.clipId).not.toBe(first.clipId);
  const again = await keepClip(
    { ...frame(course.id, 'page=2&viewrect=1,2,3,4', text), ownWords: 'x' },
    sender,
  );
  expect(again.clipId).toBe(second.clipId);
  const clips = await readAll(db, 'clips');
  expect(clips.map(({ ownWords, pictureIds }) => [ownWords, pictureIds.length]).sort()).toEqual([
    ['', 1],
    ['x', 1],
  ]);
  expect(await db.count('pictures')).toBe(2);
  db.close();
});

test('a slip on a frame without words takes no other clip for it', async () => {
  const db = await openDeck();
  const course = await startCourse(db, { name: 'Oceanography', examDay: null }, MORNING);
  const { keepClip, readSlip } = deckHandlers();
  await keepClip(frame(course.id, 'page=1', ''), sender);
  expect((await readSlip({ text: '', headings: [], page }, sender))?.kept).toBeNull();
  db.close();
});
