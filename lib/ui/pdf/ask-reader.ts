import { browser } from 'wxt/browser';
import { z } from 'zod';
import { WISHES, type Wish } from '#lib/model/wish.ts';

// No content script goes into a page of the extension's own, so that the background hands the student's wish (a
// shortcut, the menu) to the reader by message.

const Ask = z.object({ ask: z.literal('keepInReader'), tabId: z.number().int(), wish: z.enum(WISHES) });

/** Asks the reader in a tab to carry out a wish; false when there is none in that tab. */
export async function askReader(tabId: number, wish: Wish): Promise<boolean> {
  try {
    const message: z.infer<typeof Ask> = { ask: 'keepInReader', tabId, wish };
    return (await browser.runtime.sendMessage(message)) === true;
  } catch {
    // No page of the extension is open.
    return false;
  }
}

/** Carries out what the background asks of the reader in this tab, until `signal` aborts. */
export function onAsked(carryOut: (wish: Wish) => void, signal: AbortSignal): void {
  let here: number | undefined;
  void browser.tabs.getCurrent().then((tab) => (here = tab?.id));
  const listener = (message: unknown, sender: { id?: string }, respond: (answer: boolean) => void) => {
    const asked = Ask.safeParse(message);
    // Another tab's reader answers for itself.
    if (!asked.success || sender.id !== browser.runtime.id || asked.data.tabId !== here) return;
    respond(true);
    carryOut(asked.data.wish);
  };
  browser.runtime.onMessage.addListener(listener);
  signal.addEventListener('abort', () => browser.runtime.onMessage.removeListener(listener));
}
