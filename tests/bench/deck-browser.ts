import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { type ExtensionBrowser, launchChromium } from '../tools/chromium.ts';
import { benchFolder, preparedExtension } from './extension.ts';
import type { DeckSize } from './make-deck.ts';
import type { Bench } from './page/main.ts';

type Result<N extends keyof Bench> = Awaited<ReturnType<Bench[N]>>;

/** Chromium with a deck of a known size. */
export class DeckBrowser {
  readonly browser: ExtensionBrowser;

  /** Use {@link withDeckBrowser}. */
  constructor(browser: ExtensionBrowser) {
    this.browser = browser;
  }

  /** Runs one function of the bench page, in a page of its own: no connection to the deck is left open. */
  async run<N extends keyof Bench>(name: N, ...args: Parameters<Bench[N]>): Promise<Result<N>> {
    const page = await this.browser.openExtensionPage('bench.html');
    const call = { method: name as string, values: args as unknown[] };
    const result = await page.evaluate(({ method, values }) => {
      const { bench } = globalThis as unknown as { bench: Record<string, (...all: unknown[]) => unknown> };
      return bench[method]!(...values);
    }, call);
    await page.close();
    return result as Result<N>;
  }

  /** Opens the desk once, as a student would: it works out what comes next, and keeps it for the popup. */
  async openDeskOnce(): Promise<void> {
    const desk = await this.browser.openExtensionPage('desk.html');
    const deadline = Date.now() + 60_000;
    while ((await this.run('cachedItems')) === 0) {
      if (Date.now() > deadline) throw new Error('The desk kept nothing for the popup');
      await setTimeout(250);
    }
    await desk.close();
  }
}

/**
 * Starts Chromium with a deck of a size in it, and closes it after `work`. A deck is filled once in a run: the
 * browser's profile waits for the next bench that asks for the same size.
 */
export async function withDeckBrowser<T>(
  size: DeckSize,
  work: (deck: DeckBrowser) => Promise<T>,
): Promise<T> {
  const extension = await preparedExtension();
  const profile = join(await benchFolder(), `deck-${Object.values(size).join('-')}`);
  const isFilled = existsSync(profile);
  const browser = await launchChromium({ extension, profile });
  try {
    const deck = new DeckBrowser(browser);
    if (!isFilled) await deck.run('fill', size);
    return await work(deck);
  } finally {
    await browser.close();
  }
}
