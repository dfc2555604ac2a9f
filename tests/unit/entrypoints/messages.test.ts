import { beforeEach, expect, test, vi } from 'vitest';
import type { Browser } from 'wxt/browser';
import { fakeBrowser } from 'wxt/testing/fake-browser';
import { MESSAGES, type MessageName } from '#lib/model/message.ts';
import { StudentError } from '#lib/model/student-error.ts';
import { answer, type Handlers } from '../../../entrypoints/background/messages.ts';

type Sender = Browser.runtime.MessageSender;

beforeEach(() => fakeBrowser.reset());

const id = '00000000-0000-4000-8000-000000000001';
const ours = () => ({ id: fakeBrowser.runtime.id });
const fromDesk = (): Sender => ({ ...ours(), url: fakeBrowser.runtime.getURL('/desk.html') });
const fromTab = (over: object = {}): Sender =>
  ({ ...ours(), url: 'http://127.0.0.1/waves', tab: { id: 3 }, ...over }) as Sender;

const change = { clipId: id, topicIds: [id], ownWords: 'Long ones win.', unclear: false };
const page = {
  kind: 'page',
  url: 'http://127.0.0.1/waves',
  title: 'Waves',
  site: '',
  author: '',
  published: '',
  licence: '',
};
/** Data that each message may come with. */
const GOOD: Record<MessageName, unknown> = {
  readSlip: { text: 'Long waves outrun short ones.', headings: [], page },
  keepClip: {
    courseId: id,
    passage: { text: 'Long waves outrun short ones.', html: 'Long waves outrun short ones.' },
    headings: [],
    selectors: [{ type: 'TextQuoteSelector', exact: 'Long waves' }],
    pictures: [],
    page,
    topicIds: [],
    ownWords: '',
    unclear: false,
  },
  changeClip: change,
  clipsHere: { url: 'http://127.0.0.1/waves' },
  addReader: {},
  takePictures: { parts: [{ left: 0, top: 0, width: 1, height: 1 }] },
  addScript: { script: 'pictures' },
  showFramed: {},
  openDesk: { path: 'course' },
  clipTab: { tabId: 3, wish: 'selection' },
};
const names = Object.keys(MESSAGES) as MessageName[];

/** Handlers that only say that they were called. */
function handlers() {
  const handle = vi.fn(async (..._all: unknown[]): Promise<unknown> => 'handled');
  return { handle, all: Object.fromEntries(names.map((name) => [name, handle])) as unknown as Handlers };
}

test.each(names)('%s from a page of our own is handled', async (name) => {
  const { all, handle } = handlers();
  const sender = fromDesk();
  expect(await answer(all, { name, data: GOOD[name] }, sender)).toEqual({ ok: true, value: 'handled' });
  expect(handle).toHaveBeenCalledWith(GOOD[name], sender);
});

test.each(['readSlip', 'keepClip', 'changeClip', 'clipsHere', 'addReader', 'openDesk'])(
  '%s from a web page is handled',
  async (name) => {
    const { all } = handlers();
    const reply = await answer(all, { name, data: GOOD[name as MessageName] }, fromTab());
    expect(reply).toEqual({ ok: true, value: 'handled' });
  },
);

const clipTab = { name: 'clipTab', data: GOOD.clipTab };
const changeClip = { name: 'changeClip', data: change };
test.each<[string, unknown, () => Sender]>([
  ['another extension', changeClip, () => ({ ...fromDesk(), id: 'another' })],
  ['nobody', changeClip, () => ({ url: fakeBrowser.runtime.getURL('/desk.html') })],
  ['a web page, though it is for our own pages only', clipTab, () => fromTab()],
  ['a web page outside any tab', changeClip, () => ({ ...ours(), url: 'http://127.0.0.1/waves' })],
  [
    'a page whose address only looks like ours',
    clipTab,
    () => fromTab({ url: 'http://127.0.0.1/chrome-extension://test-extension-id/' }),
  ],
  ['a page without an address', clipTab, () => ours()],
])('a message from %s is not answered', async (_who, message, sender) => {
  const { all, handle } = handlers();
  expect(await answer(all, message, sender())).toBeUndefined();
  expect(handle).not.toHaveBeenCalled();
});

test.each([
  ['a name that is not there', { name: 'deleteAll', data: {} }],
  ['a name that every object has', { name: 'toString', data: {} }],
  ['no name', { data: {} }],
  ['a name that is no text', { name: 7 }],
  ['a text', 'changeClip'],
  ['nothing', null],
])('%s is not answered', async (_what, message) => {
  const { all, handle } = handlers();
  expect(await answer(all, message, fromDesk())).toBeUndefined();
  expect(handle).not.toHaveBeenCalled();
});

test.each([
  ['changeClip', { ...change, clipId: 'it' }, 'clipId'],
  ['changeClip', { ...change, topicIds: [id, 'deep'] }, 'topicIds.1'],
  ['changeClip', { ...change, ownWords: 'x'.repeat(20_001) }, 'ownWords'],
  ['changeClip', undefined, ''],
  ['openDesk', { path: 'course/../../evil' }, 'path'],
  ['openDesk', { path: 'clip/javascript:alert(1)' }, 'path'],
  ['clipTab', { tabId: '3', wish: 'selection' }, 'tabId'],
  ['readSlip', { ...(GOOD.readSlip as object), page: { ...page, url: 'javascript:alert(1)' } }, 'page.url'],
  ['keepClip', { ...(GOOD.keepClip as object), selectors: [{ type: 'XPathSelector' }] }, 'selectors.0.type'],
])('%s with bad data is answered with the field that is wrong', async (name, data, field) => {
  const { all, handle } = handlers();
  const reply = await answer(all, { name, data }, fromDesk());
  expect(reply).toEqual({ ok: false, error: 'errorFieldWrong', values: [field, expect.any(String)] });
  expect(handle).not.toHaveBeenCalled();
});

test('what the message does not have is not handed on', async () => {
  const { all, handle } = handlers();
  await answer(all, { name: 'changeClip', data: { ...change, createdAt: 0 } }, fromTab());
  expect(handle.mock.calls[0]![0]).toEqual(change);
});

test.each([
  [new StudentError('errorClipGone'), { ok: false, error: 'errorClipGone', values: [] }],
  [
    new StudentError('errorSelectionTooLong', 7, 5),
    { ok: false, error: 'errorSelectionTooLong', values: ['7', '5'] },
  ],
  [new TypeError('no such thing'), { ok: false, error: 'errorUnexpected', values: ['no such thing'] }],
  ['just words', { ok: false, error: 'errorUnexpected', values: ['just words'] }],
])('a handler that fails with %s makes an answer of it', async (error, reply) => {
  const { all, handle } = handlers();
  handle.mockRejectedValue(error);
  expect(await answer(all, changeClip, fromTab())).toEqual(reply);
});
