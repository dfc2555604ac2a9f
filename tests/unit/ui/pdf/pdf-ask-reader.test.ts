import { beforeEach, expect, test, vi } from 'vitest';
import { fakeBrowser } from 'wxt/testing/fake-browser';
import { askReader, onAsked } from '#lib/ui/pdf/ask-reader.ts';
import { fakeExtension } from '../fake-extension.ts';

beforeEach(() => fakeExtension());

/** A reader in a tab; gives the wishes it carried out. */
async function aReader(tabId: number): Promise<{ wishes: string[]; close(): void }> {
  vi.spyOn(fakeBrowser.tabs, 'getCurrent').mockResolvedValue({ id: tabId } as never);
  const wishes: string[] = [];
  const closing = new AbortController();
  onAsked((wish) => wishes.push(wish), closing.signal);
  await new Promise((resolve) => setTimeout(resolve));
  return { wishes, close: () => closing.abort() };
}

/** The fake browser tells no sender, and takes what is returned for the answer. */
function withSender(id = fakeBrowser.runtime.id): void {
  const send = fakeBrowser.runtime.onMessage.trigger.bind(fakeBrowser.runtime.onMessage);
  vi.spyOn(fakeBrowser.runtime, 'sendMessage').mockImplementation((async (message: unknown) => {
    let answer: unknown;
    await send(message, { id }, (given: unknown) => (answer = given));
    return answer;
  }) as never);
}

test('the reader of a tab carries out what is wished for there', async () => {
  const { wishes } = await aReader(3);
  withSender();
  expect(await askReader(3, 'frame')).toBe(true);
  expect(wishes).toEqual(['frame']);
});

test('a reader in another tab does not, and then there is none', async () => {
  const { wishes } = await aReader(4);
  withSender();
  expect(await askReader(3, 'selection')).toBe(false);
  expect(wishes).toEqual([]);
});

test('with no page of the extension open there is none', async () => {
  expect(await askReader(3, 'selection')).toBe(false);
});

test('another extension is not listened to, and a reader that closed does not answer', async () => {
  const { wishes, close } = await aReader(3);
  withSender('another');
  expect(await askReader(3, 'selection')).toBe(false);
  close();
  withSender();
  expect(await askReader(3, 'selection')).toBe(false);
  expect(wishes).toEqual([]);
});
