import { type BrowserContext, type CDPSession, type Page, type Worker, chromium } from 'playwright-core';
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { findChromium } from './find-browsers.mjs';

export interface ChromiumOptions {
  /** Folder of the built extension. */
  extension?: string;
  /** Profile folder to keep; without it a fresh one is made and removed on close. */
  profile?: string;
  headless?: boolean;
  /** X display for a headed browser, such as `:99`. */
  display?: string;
  /** Port of a proxy on 127.0.0.1 that is to see every request, those to 127.0.0.1 included. */
  proxyPort?: number;
  args?: string[];
  /** Further settings for the context: viewport, colour scheme, locale. */
  context?: NonNullable<Parameters<typeof chromium.launchPersistentContext>[1]>;
}

interface TabTarget {
  type: string;
  targetId: string;
  url: string;
  embedderData?: { tabActive?: boolean };
}

/** Chromium with the extension in it. */
export class ExtensionBrowser {
  readonly context: BrowserContext;
  readonly extensionId: string;
  readonly profile: string;
  #cdp: CDPSession;
  #cleanUp: () => Promise<void>;

  /** Use {@link launchChromium}. */
  constructor(
    context: BrowserContext,
    extensionId: string,
    profile: string,
    cdp: CDPSession,
    cleanUp: () => Promise<void>,
  ) {
    this.context = context;
    this.extensionId = extensionId;
    this.profile = profile;
    this.#cdp = cdp;
    this.#cleanUp = cleanUp;
  }

  /** The address of one of the extension's own files. */
  url(path: string): string {
    return `chrome-extension://${this.extensionId}/${path}`;
  }

  /** The running service worker; waits for it to start. */
  async worker(): Promise<Worker> {
    const own = (worker: Worker) => worker.url().startsWith(this.url(''));
    return (
      this.context.serviceWorkers().find(own) ??
      this.context.waitForEvent('serviceworker', { predicate: own, timeout: 10_000 })
    );
  }

  /** Opens one of the extension's pages, such as `desk.html`, in a new tab. */
  async openExtensionPage(path: string): Promise<Page> {
    const page = await this.context.newPage();
    await page.goto(this.url(path));
    return page;
  }

  /**
   * Clicks the toolbar button while `page` is in front, as a user would (the click grants activeTab for that
   * page), and returns the popup. Close the popup before opening another.
   */
  async openToolbarPopup(page: Page): Promise<Page> {
    await page.bringToFront();
    const { targetInfos } = await this.#cdp.send('Target.getTargets', { filter: [{ type: 'tab' }] });
    const tab = (targetInfos as TabTarget[]).find((target) => {
      return target.url === page.url() && target.embedderData?.tabActive;
    });
    if (!tab) throw new Error(`No tab in front shows ${page.url()}`);
    const [popup] = await Promise.all([
      this.context.waitForEvent('page', { timeout: 10_000 }),
      this.#cdp.send('Extensions.triggerAction', { id: this.extensionId, targetId: tab.targetId }),
    ]);
    await popup.waitForURL(this.url('popup.html'));
    return popup;
  }

  /** Presses a browser shortcut, such as `Alt+K`, in `page`: unlike `page.keyboard`, it reaches commands. */
  async pressShortcut(page: Page, shortcut: string): Promise<void> {
    const names = shortcut.split('+');
    const key = names.pop()!.toUpperCase();
    const bits: Record<string, number> = { Alt: 1, Ctrl: 2, Meta: 4, Shift: 8 };
    const modifiers = names.reduce((sum, name) => sum | bits[name]!, 0);
    const code = key.charCodeAt(0);
    await page.bringToFront();
    const cdp = await this.context.newCDPSession(page);
    // Chromium hands a key that the page left alone to its own shortcuts only if it carries a native key code.
    const event = { modifiers, key, windowsVirtualKeyCode: code, nativeVirtualKeyCode: code };
    await cdp.send('Input.dispatchKeyEvent', { type: 'rawKeyDown', ...event });
    await cdp.send('Input.dispatchKeyEvent', { type: 'keyUp', ...event });
    await cdp.detach();
  }

  /** Kills the browser's process, as a crash or a power cut would, and waits until it is gone. */
  async kill(): Promise<void> {
    const { processInfo } = await this.#cdp.send('SystemInfo.getProcessInfo');
    const gone = new Promise((resolve) => this.context.once('close', resolve));
    process.kill(processInfo.find(({ type }) => type === 'browser')!.id, 'SIGKILL');
    await gone;
  }

  /** Closes the browser and removes the profile if it was a temporary one. */
  async close(): Promise<void> {
    await this.context.close();
    await this.#cleanUp();
  }
}

// Chromium's own errands are sent to a port that it refuses to connect to.
const NOWHERE = 'http://127.0.0.1:9/';
const QUIET = [
  `--gaia-url=${NOWHERE}`,
  `--google-url=${NOWHERE}`,
  `--google-apis-url=${NOWHERE}`,
  `--autofill-server-url=${NOWHERE}`,
  `--component-updater=url-source=${NOWHERE}`,
  '--disable-domain-reliability',
  '--disable-quic',
  '--no-pings',
];

function browserArgs(options: ChromiumOptions, extension: string): string[] {
  return [
    `--disable-extensions-except=${extension}`,
    `--load-extension=${extension}`,
    '--enable-unsafe-extension-debugging',
    ...QUIET,
    ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
    ...(options.proxyPort
      ? [`--proxy-server=127.0.0.1:${options.proxyPort}`, '--proxy-bypass-list=<-loopback>']
      : []),
    ...(options.args ?? []),
  ];
}

/** Without a dictionary of its own, Chromium would fetch one as soon as something is typed. */
const PREFERENCES = {
  browser: { enable_spellchecking: false },
  spellcheck: { dictionaries: [], dictionary: '', use_spelling_service: false },
};

async function quietProfile(profile: string): Promise<void> {
  const folder = join(profile, 'Default');
  await mkdir(folder, { recursive: true });
  // A profile that was used before keeps the preferences that it has.
  await writeFile(join(folder, 'Preferences'), JSON.stringify(PREFERENCES), { flag: 'wx' }).catch(
    (error: NodeJS.ErrnoException) => {
      if (error.code !== 'EEXIST') throw error;
    },
  );
}

/** Starts Chromium with the built extension in it. */
export async function launchChromium(options: ChromiumOptions = {}): Promise<ExtensionBrowser> {
  const executablePath = findChromium();
  if (!executablePath) throw new Error('Chromium was not found: install it or set CHROMIUM_PATH.');
  const extension = resolve(options.extension ?? '.output/chrome-mv3');
  const profile = options.profile ?? (await mkdtemp(join(tmpdir(), 'plumbline-chromium-')));
  const cleanUp = async () => {
    if (!options.profile) await rm(profile, { recursive: true, force: true, maxRetries: 5 });
  };
  await quietProfile(profile);
  // Without it Playwright passes over toolbar popups, which begin as targets of the kind `other`.
  process.env.PW_CHROMIUM_ATTACH_TO_OTHER = '1';
  const context = await chromium.launchPersistentContext(profile, {
    executablePath,
    headless: options.headless ?? true,
    ignoreDefaultArgs: ['--disable-extensions'],
    args: browserArgs(options, extension),
    ...(options.display ? { env: { ...process.env, DISPLAY: options.display } } : {}),
    ...options.context,
  });
  try {
    const cdp = await context.browser()!.newBrowserCDPSession();
    const { extensions } = await cdp.send('Extensions.getExtensions');
    const own = extensions.find(({ path }) => path === extension);
    if (!own) throw new Error(`Chromium did not load the extension in ${extension}`);
    return new ExtensionBrowser(context, own.id, profile, cdp, cleanUp);
  } catch (error) {
    await context.close();
    await cleanUp();
    throw error;
  }
}
