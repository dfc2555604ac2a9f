import type { CDPSession, Page } from 'playwright-core';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type ChromiumOptions, type ExtensionBrowser, launchChromium } from './chromium.ts';
import type { BrowserDriver, PageDriver, PopupDriver, TabDriver } from './driver.ts';
import { until } from './driver.ts';

type Run = PageDriver['run'];

function pageDriver(page: Page): PageDriver {
  return {
    // Source and arguments, since Playwright takes one argument only.
    run: ((script, ...args) => page.evaluate(`(${script.toString()})(...${JSON.stringify(args)})`)) as Run,
    clickAt: (x, y) => page.mouse.click(x, y),
    press: (keys) => page.keyboard.press(keys),
    type: (text) => page.keyboard.type(text),
    screenshot: () => page.screenshot(),
  };
}

/** The id of the world in which the extension's content scripts live in a page. */
async function extensionWorld(session: CDPSession, extensionId: string): Promise<number | null> {
  let world: number | null = null;
  const note = ({ context }: { context: { id: number; origin: string } }) => {
    if (context.origin === `chrome-extension://${extensionId}`) world = context.id;
  };
  session.on('Runtime.executionContextCreated', note);
  await session.send('Runtime.enable');
  await session.send('Runtime.disable');
  session.off('Runtime.executionContextCreated', note);
  return world;
}

/** Runs an expression in the world of the extension's content script; null while there is none in the page. */
export async function inExtensionWorld(
  browser: ExtensionBrowser,
  page: Page,
  expression: string,
): Promise<unknown> {
  const session = await browser.context.newCDPSession(page);
  try {
    const contextId = await extensionWorld(session, browser.extensionId);
    if (contextId === null) return null;
    const { result, exceptionDetails } = await session.send('Runtime.evaluate', {
      expression,
      contextId,
      returnByValue: true,
      awaitPromise: true,
    });
    if (exceptionDetails) throw new Error(exceptionDetails.exception?.description ?? exceptionDetails.text);
    return result.value;
  } finally {
    await session.detach();
  }
}

export const SLIP_ROOT =
  `(() => { const slip = document.querySelector('plumbline-slip');` +
  ` return slip && chrome.dom.openOrClosedShadowRoot(slip); })()`;

function tabDriver(browser: ExtensionBrowser, page: Page): TabDriver {
  return {
    ...pageDriver(page),
    goto: async (url) => void (await page.goto(url)),
    gotoDesk: async (hash = '') => {
      await page.goto(browser.url(`desk.html${hash}`));
      // An address that differs in its last part only loads nothing anew.
      await page.reload();
    },
    openSlip: () => browser.pressShortcut(page, 'Alt+K'),
    inSlip: (async (script, ...args) => {
      const call = `(${script.toString()})(${SLIP_ROOT}, ...${JSON.stringify(args)})`;
      return inExtensionWorld(browser, page, call);
    }) as TabDriver['inSlip'],
    openPopup: async (): Promise<PopupDriver> => {
      const popup = await browser.openToolbarPopup(page);
      return { ...pageDriver(popup), close: () => popup.close() };
    },
  };
}

export interface ChromiumDriver extends BrowserDriver {
  readonly browser: ExtensionBrowser;
  readonly page: Page;
}

/** The main job's hands in Chromium. The profile goes with `close`, unless one was given. */
export async function driveChromium(options: ChromiumOptions = {}): Promise<ChromiumDriver> {
  const profile = options.profile ?? (await mkdtemp(join(tmpdir(), 'plumbline-job-')));
  const start = async () => {
    const browser = await launchChromium({ ...options, profile });
    const page = browser.context.pages()[0] ?? (await browser.context.newPage());
    return { browser, page, tab: tabDriver(browser, page) };
  };
  let now = await start();
  return {
    name: 'Chromium',
    get tab() {
      return now.tab;
    },
    get browser() {
      return now.browser;
    },
    get page() {
      return now.page;
    },
    async toNewestTab() {
      const { browser } = now;
      const page = browser.context.pages().at(-1)!;
      now = { browser, page, tab: tabDriver(browser, page) };
    },
    async restart() {
      await now.browser.close();
      now = await until('Chromium to start again', start, 30_000);
    },
    async crash() {
      await now.browser.kill();
      now = await until('Chromium to start again', start, 30_000);
    },
    async close() {
      await now.browser.close();
      if (!options.profile) await rm(profile, { recursive: true, force: true, maxRetries: 5 });
    },
  };
}
