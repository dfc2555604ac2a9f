import { mkdtemp, mkdir, rm, writeFile } from 'node:fs/promises';
import { type Server, createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Browser } from 'wxt/browser';
import { type ExtensionBrowser, launchChromium } from '#tests/tools/chromium.ts';
import { type Firefox, launchFirefox } from '#tests/tools/firefox.ts';
import { type LoggingProxy, startLoggingProxy } from '#tests/tools/logging-proxy.ts';
import { countReport } from '#tests/tools/test-report.ts';
import { watchTraffic } from '#tests/tools/traffic.ts';
import { startXvfb } from '#tests/tools/xvfb.ts';

declare const chrome: typeof Browser;

const PASSAGE = 'A plumb line hangs straight down.';
let server: Server;
let site: string;
let scratch: string;

beforeAll(async () => {
  server = createServer((_, answer) => {
    answer.setHeader('content-type', 'text/html');
    answer.end(`<!doctype html><title>Page</title><p>${PASSAGE}</p>`);
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  site = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
  scratch = await mkdtemp(join(tmpdir(), 'plumbline-harness-'));
});

afterAll(async () => {
  server.closeAllConnections();
  server.close();
  await rm(scratch, { recursive: true, force: true, maxRetries: 5 });
});

/** Runs in an extension page or worker: the text of the first tab that may be read, or why none may be. */
async function readTab(): Promise<string> {
  let refusal = '';
  for (const tab of await chrome.tabs.query({})) {
    try {
      const func = () => document.querySelector('p')?.textContent ?? '';
      const [frame] = await chrome.scripting.executeScript({ target: { tabId: tab.id! }, func });
      if (frame?.result) return frame.result;
    } catch (error) {
      refusal = String(error);
    }
  }
  return refusal;
}

describe('Chromium', () => {
  let browser: ExtensionBrowser;
  beforeAll(async () => {
    browser = await launchChromium();
  });
  afterAll(async () => browser?.close());

  test('a click on the toolbar button opens the popup and grants it the page', async () => {
    const page = await browser.context.newPage();
    await page.goto(site);
    const worker = await browser.worker();
    expect(await worker.evaluate(readTab)).toMatch(/cannot access/i);
    const popup = await browser.openToolbarPopup(page);
    expect(await popup.evaluate(readTab)).toBe(PASSAGE);
    await popup.close();
    await page.close();
  });

  test('the shortcut reaches the extension without a screen', async () => {
    const page = await browser.context.newPage();
    await page.goto(site);
    await page.locator('p').click({ clickCount: 3 });
    await browser.pressShortcut(page, 'Alt+K');
    await page.waitForSelector('plumbline-slip', { state: 'attached', timeout: 5000 });
    await page.close();
  });

  test('the shortcut reaches the extension from a real keyboard', async () => {
    const screen = await startXvfb();
    const headed = { headless: false, display: screen.display, context: { viewport: null } };
    const visible = await launchChromium(headed);
    try {
      const page = visible.context.pages()[0]!;
      await page.goto(site);
      await page.locator('p').click({ clickCount: 3 });
      await screen.focus('chromium');
      await screen.press('alt+k');
      await page.waitForSelector('plumbline-slip', { state: 'attached', timeout: 5000 });
    } finally {
      await visible.close();
      await screen.close();
    }
  });
});

describe('Firefox', () => {
  let profile: string;
  let firefox: Firefox;
  beforeAll(async () => {
    profile = join(scratch, 'firefox');
    firefox = await launchFirefox({ profile });
  });
  afterAll(async () => firefox?.close());

  test('a click on the toolbar button opens the popup and grants it the page', async () => {
    await firefox.navigate(site);
    const page = (await firefox.tabs())[0]!;
    await firefox.newTab(firefox.url('desk.html'));
    expect(await firefox.run(readTab)).toMatch(/missing host permission/i);
    await firefox.closeTab();
    await firefox.switchTo(page);
    const popup = await firefox.openToolbarPopup();
    expect(await popup.run(readTab)).toBe(PASSAGE);
    await popup.close();
  });

  test('the shortcut reaches the extension', async () => {
    await firefox.navigate(site);
    await firefox.run(() => getSelection()!.selectAllChildren(document.querySelector('p')!));
    await firefox.pressShortcut('Alt+K');
    await firefox.find('plumbline-slip');
  });

  test('stored data is still there after a restart', async () => {
    const store = `
      const open = indexedDB.open('harness', 1);
      open.onupgradeneeded = () => open.result.createObjectStore('store');
      return new Promise((resolve, reject) => {
        open.onerror = () => reject(open.error);
        open.onsuccess = () => {
          const all = open.result.transaction('store', 'readwrite').objectStore('store');
          if (arguments[0]) all.put(arguments[0], 'key');
          all.get('key').onsuccess = (event) => resolve(event.target.result);
        };
      });`;
    await firefox.openExtensionPage('desk.html');
    await firefox.run(store, 'kept');
    await firefox.close();
    firefox = await launchFirefox({ profile });
    await firefox.openExtensionPage('desk.html');
    expect(await firefox.run(store, '')).toBe('kept');
  });
});

describe('traffic', () => {
  let proxy: LoggingProxy;
  beforeAll(async () => {
    proxy = await startLoggingProxy();
  });
  afterAll(async () => proxy?.close());

  /** Runs in a page or worker: asks for two addresses that no one may reach. */
  async function askElsewhere(name: string): Promise<void> {
    await fetch(`http://${name}.invalid/`).catch(() => {});
    await fetch(`https://${name}.invalid/`).catch(() => {});
  }

  test('in Chromium every request of pages and workers is seen, and the browser adds none', async () => {
    // An extension of our own, since the real one is not able to ask for anything.
    const extension = join(scratch, 'asking');
    await mkdir(extension);
    const background = { service_worker: 'background.js' };
    const manifest = { manifest_version: 3, name: 'Asking', version: '1', background };
    await writeFile(join(extension, 'manifest.json'), JSON.stringify(manifest));
    await writeFile(join(extension, 'background.js'), '');

    const browser = await launchChromium({ extension, proxyPort: proxy.port });
    try {
      const requests = watchTraffic(browser.context);
      const page = await browser.context.newPage();
      await page.goto(site);
      await page.evaluate(askElsewhere, 'page');
      await (await browser.worker()).evaluate(askElsewhere, 'worker');
      const seen = requests.filter(({ url }) => url.includes('.invalid'));
      expect(seen).toEqual([
        { url: 'http://page.invalid/', from: site },
        { url: 'https://page.invalid/', from: site },
        { url: 'http://worker.invalid/', from: browser.url('background.js') },
        { url: 'https://worker.invalid/', from: browser.url('background.js') },
      ]);
    } finally {
      await browser.close();
    }
    expect(proxy.forwarded).toContainEqual({ method: 'GET', url: site });
    const refused = new Set(proxy.refused.map(({ method, url }) => `${method} ${url}`));
    expect(refused).toEqual(
      new Set([
        'GET http://page.invalid/',
        'CONNECT page.invalid:443',
        'GET http://worker.invalid/',
        'CONNECT worker.invalid:443',
      ]),
    );
  });

  test('in Firefox every request is seen, and the browser adds none', async () => {
    proxy.forwarded.length = 0;
    proxy.refused.length = 0;
    const firefox = await launchFirefox({ profile: join(scratch, 'firefox'), proxyPort: proxy.port });
    try {
      await firefox.navigate(site);
      await firefox.run(askElsewhere, 'page');
    } finally {
      await firefox.close();
    }
    expect(proxy.forwarded).toContainEqual({ method: 'GET', url: site });
    const refused = new Set(proxy.refused.map(({ method, url }) => `${method} ${url}`));
    expect(refused).toEqual(new Set(['GET http://page.invalid/', 'CONNECT page.invalid:443']));
  });
});

describe('totals', () => {
  const file = (status: string, ...tests: string[]) => {
    return { status, assertionResults: tests.map((test) => ({ status: test })) };
  };
  const report = (passed: number, failed: number, total: number, testResults: object[]) => {
    const numbers = { numTotalTests: total, numPassedTests: passed, numFailedTests: failed };
    return JSON.stringify({ ...numbers, testResults });
  };

  test('count passed, failed and skipped tests', () => {
    const json = report(2, 1, 4, [file('failed', 'passed', 'failed', 'pending'), file('passed', 'passed')]);
    expect(countReport(json, 1)).toEqual({ passed: 2, failed: 1, skipped: 1 });
  });

  test('count a file that did not load as a failure', () => {
    const json = report(1, 0, 1, [file('passed', 'passed'), file('failed')]);
    expect(countReport(json, 1)).toEqual({ passed: 1, failed: 1, skipped: 0 });
  });

  test.each([
    ['ended badly though all passed', report(1, 0, 1, [file('passed', 'passed')]), 1],
    ['was killed', report(1, 0, 1, [file('passed', 'passed')]), null],
  ])('count a run that %s as a failure', (_, json, code) => {
    expect(countReport(json, code)).toEqual({ passed: 1, failed: 1, skipped: 0 });
  });

  test.each([
    ['no tests', report(0, 0, 0, [])],
    ['no report', undefined],
    ['half a report', '{'],
  ])('count %s as a failure', (_, json) => {
    expect(countReport(json, 0)).toEqual({ passed: 0, failed: 1, skipped: 0 });
  });
});
