import { beforeEach, expect, test, vi } from 'vitest';
import { fakeBrowser } from 'wxt/testing/fake-browser';
import { deckHandlers } from '../../../entrypoints/background/handlers.ts';
import { fakeExtension } from '../ui/fake-extension.ts';

beforeEach(() => {
  vi.restoreAllMocks();
  fakeExtension();
});

test.each([
  ['the page', {}, [0]],
  ['a frame in it', { frameId: 4 }, [4]],
])('the readable script goes into %s that asks for it', async (_where, sender, frameIds) => {
  const put = vi.spyOn(fakeBrowser.scripting, 'executeScript').mockResolvedValue([] as never);
  await deckHandlers().addReader({}, { tab: { id: 7 }, ...sender } as never);
  expect(put.mock.calls).toEqual([[{ target: { tabId: 7, frameIds }, files: ['/readable.js'] }]]);
});
