import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { findFirefox } from './find-browsers.mjs';
import { FirefoxElement, FirefoxPopup, type Script, keyActions, scriptBody } from './firefox-parts.ts';
import { Marionette } from './marionette.ts';

const ADD_ON_ID = 'plumbline@plumbline.invalid';
// Fixed, so that the add-on's pages keep their origin, and thus their data, when the browser starts again.
const UUID = '5f3c1c1e-0c56-4c2b-9a53-0d4e3a7f2b11';
const BUTTON = '#plumbline_plumbline_invalid-BAP';

export interface FirefoxOptions {
  /** Folder of the built add-on. */
  extension?: string;
  /** Profile folder to keep; without it a fresh one is made and removed on close. */
  profile?: string;
  headless?: boolean;
  /** X display for a headed browser, such as `:99`. */
  display?: string;
  /** Port of a proxy on 127.0.0.1 that is to see every request, those to 127.0.0.1 included. */
  proxyPort?: number;
}

function preferences(proxyPort: number | undefined): Record<string, string | number | boolean> {
  const proxy = {
    'network.proxy.type': 1,
    'network.proxy.http': '127.0.0.1',
    'network.proxy.http_port': proxyPort ?? 0,
    'network.proxy.ssl': '127.0.0.1',
    'network.proxy.ssl_port': proxyPort ?? 0,
    'network.proxy.no_proxies_on': '',
    'network.proxy.allow_hijacking_localhost': true,
  };
  return {
    'marionette.port': 0,
    'extensions.webextensions.uuids': JSON.stringify({ [ADD_ON_ID]: UUID }),
    // A temporary add-on is taken out when the browser closes; its data must outlive that.
    'extensions.webextensions.keepStorageOnUninstall': true,
    'extensions.webextensions.keepUuidOnUninstall': true,
    'xpinstall.signatures.required': false,
    'browser.aboutwelcome.enabled': false,
    'browser.startup.page': 0,
    'datareporting.policy.dataSubmissionEnabled': false,
    'intl.accept_languages': 'en',
    'network.captive-portal-service.enabled': false,
    'network.connectivity-service.enabled': false,
    'media.gmp-manager.updateEnabled': false,
    'services.settings.server': 'data:,#remote-settings-dummy/v1',
    ...(proxyPort ? proxy : {}),
  };
}

/** Firefox with the add-on in it, driven over its own remote protocol. */
export class Firefox {
  readonly marionette: Marionette;
  readonly profile: string;
  #process: ChildProcess;
  #cleanUp: () => Promise<void>;

  /** Use {@link launchFirefox}. */
  constructor(marionette: Marionette, profile: string, browser: ChildProcess, cleanUp: () => Promise<void>) {
    this.marionette = marionette;
    this.profile = profile;
    this.#process = browser;
    this.#cleanUp = cleanUp;
  }

  /** The address of one of the add-on's own files. */
  url(path: string): string {
    return `moz-extension://${UUID}/${path}`;
  }

  /** Loads an address in the current tab. */
  async navigate(url: string): Promise<void> {
    await this.marionette.send('WebDriver:Navigate', { url });
  }

  /** Opens one of the add-on's pages, such as `desk.html`, in the current tab. */
  async openExtensionPage(path: string): Promise<void> {
    await this.navigate(this.url(path));
  }

  /** All elements that match, without waiting. */
  async findAll(css: string): Promise<FirefoxElement[]> {
    const found = await this.marionette.send<Record<string, string>[]>('WebDriver:FindElements', {
      using: 'css selector',
      value: css,
    });
    return found.map((reference) => new FirefoxElement(this.marionette, reference));
  }

  /** The first element that matches; waits for one to appear. */
  async find(css: string, timeout = 5000): Promise<FirefoxElement> {
    const deadline = Date.now() + timeout;
    for (;;) {
      const [element] = await this.findAll(css);
      if (element) return element;
      if (Date.now() > deadline) throw new Error(`Nothing matched ${css} within ${timeout} ms`);
      await sleep(50);
    }
  }

  /** Runs a function (it cannot see variables outside it) or a script body in the page; promises are awaited. */
  async run<A extends unknown[], T>(script: Script<A, T>, ...args: A): Promise<T> {
    const params = { script: scriptBody(script), args };
    return (await this.marionette.send<{ value: T }>('WebDriver:ExecuteScript', params)).value;
  }

  /** Does something in the browser's own window instead of the page. */
  async inChrome<T>(action: () => Promise<T>): Promise<T> {
    await this.marionette.send('Marionette:SetContext', { value: 'chrome' });
    try {
      return await action();
    } finally {
      await this.marionette.send('Marionette:SetContext', { value: 'content' });
    }
  }

  /** Performs WebDriver actions (keys, pointer, wheel), then lets go of every key and button. */
  async performActions(actions: object[]): Promise<void> {
    await this.marionette.send('WebDriver:PerformActions', { actions });
    await this.marionette.send('WebDriver:ReleaseActions');
  }

  /** Presses keys in the page: `Tab`, `Shift+Enter`, `k`. */
  async press(keys: string): Promise<void> {
    await this.performActions(keyActions(keys));
  }

  /** Presses a browser shortcut, such as `Alt+K`, as the browser's window gets it: it reaches commands. */
  async pressShortcut(keys: string): Promise<void> {
    await this.inChrome(() => this.press(keys));
  }

  /** Pins the toolbar button if need be, clicks it (which grants activeTab) and returns the open popup. */
  async openToolbarPopup(): Promise<FirefoxPopup> {
    return this.inChrome(async () => {
      await this.run(
        `CustomizableUI.addWidgetToArea('plumbline_plumbline_invalid-browser-action', 'nav-bar')`,
      );
      await (await this.find(BUTTON)).click();
      await this.find('panel[panelopen=true] browser.webextension-popup-browser');
      const popup = new FirefoxPopup(this);
      await popup.waitUntilLoaded(this.url('popup.html'));
      await popup.focus();
      return popup;
    });
  }

  /** A PNG of what the tab shows, or of the whole page. */
  async screenshot({ full = false } = {}): Promise<Buffer> {
    const params = { full, hash: false };
    const { value } = await this.marionette.send<{ value: string }>('WebDriver:TakeScreenshot', params);
    return Buffer.from(value, 'base64');
  }

  /** Makes the page area this large; Firefox has a least width of about 500 pixels. */
  async setViewport(width: number, height: number): Promise<void> {
    const frame = await this.run(() => [outerWidth - innerWidth, outerHeight - innerHeight]);
    await this.marionette.send('WebDriver:SetWindowRect', {
      width: width + frame[0]!,
      height: height + frame[1]!,
    });
  }

  /** Handles of all tabs. */
  async tabs(): Promise<string[]> {
    return this.marionette.send('WebDriver:GetWindowHandles');
  }

  /** Makes another tab the current one and shows it. */
  async switchTo(handle: string): Promise<void> {
    await this.marionette.send('WebDriver:SwitchToWindow', { handle, focus: true });
  }

  /** Opens a new tab, makes it the current one and returns its handle. */
  async newTab(url?: string): Promise<string> {
    const { handle } = await this.marionette.send<{ handle: string }>('WebDriver:NewWindow', {
      type: 'tab',
      focus: true,
    });
    await this.switchTo(handle);
    if (url) await this.navigate(url);
    return handle;
  }

  /** Closes the current tab; switch to another one afterwards. */
  async closeTab(): Promise<void> {
    await this.marionette.send('WebDriver:CloseWindow');
  }

  /** Kills the browser's process, as a crash or a power cut would, and waits until it is gone. */
  async kill(): Promise<void> {
    this.#process.kill('SIGKILL');
    await end(this.#process);
    this.marionette.close();
  }

  /** Quits the browser and removes the profile if it was a temporary one. */
  async close(): Promise<void> {
    const quit = this.marionette.send('Marionette:Quit', { flags: ['eForceQuit'] });
    // The browser may be gone before it answers.
    await quit.catch(() => {});
    await end(this.#process);
    this.marionette.close();
    await this.#cleanUp();
  }
}

function hasEnded({ pid, exitCode, signalCode }: ChildProcess): boolean {
  return pid === undefined || exitCode !== null || signalCode !== null;
}

async function end(browser: ChildProcess): Promise<void> {
  if (hasEnded(browser)) return;
  const patience = setTimeout(() => browser.kill('SIGKILL'), 10_000);
  await once(browser, 'exit');
  clearTimeout(patience);
}

// With port 0 the browser chooses a free port and writes it down in its profile.
async function readPort(profile: string, browser: ChildProcess, errors: () => string): Promise<number> {
  const deadline = Date.now() + 30_000;
  for (;;) {
    const port = Number(await readFile(join(profile, 'MarionetteActivePort'), 'utf8').catch(() => 0));
    if (port > 0) return port;
    if (hasEnded(browser)) throw new Error(`Firefox ended with ${browser.exitCode}: ${errors()}`);
    if (Date.now() > deadline) throw new Error(`Firefox did not listen within 30 s: ${errors()}`);
    await sleep(30);
  }
}

/** Starts Firefox with the built add-on in it. Data survives when the same profile is started again. */
export async function launchFirefox(options: FirefoxOptions = {}): Promise<Firefox> {
  const path = findFirefox();
  if (!path) throw new Error('Firefox was not found: install it or set FIREFOX_PATH.');
  const profile = options.profile ?? (await mkdtemp(join(tmpdir(), 'plumbline-firefox-')));
  const cleanUp = async () => {
    if (!options.profile) await rm(profile, { recursive: true, force: true, maxRetries: 5 });
  };
  await mkdir(profile, { recursive: true });
  await rm(join(profile, 'MarionetteActivePort'), { force: true });
  const lines = Object.entries(preferences(options.proxyPort)).map(([name, value]) => {
    return `user_pref(${JSON.stringify(name)}, ${JSON.stringify(value)});\n`;
  });
  await writeFile(join(profile, 'user.js'), lines.join(''));

  const args = ['--marionette', '-remote-allow-system-access', '--no-remote', '--profile', profile];
  if (options.headless ?? true) args.push('--headless');
  const env = {
    ...process.env,
    // Released builds ignore another settings server unless this is set.
    MOZ_REMOTE_SETTINGS_DEVTOOLS: '1',
    ...(options.display ? { DISPLAY: options.display } : {}),
  };
  const browser = spawn(path, [...args, 'about:blank'], { stdio: ['ignore', 'ignore', 'pipe'], env });
  let errors = '';
  browser.stderr.on('data', (chunk) => (errors = (errors + String(chunk)).slice(-2000)));
  // Without a listener a missing program would end the test run; readPort reports it.
  browser.on('error', (error) => (errors = error.message));
  try {
    const marionette = await Marionette.connect(await readPort(profile, browser, () => errors));
    await marionette.send('WebDriver:NewSession', { capabilities: {} });
    const folder = resolve(options.extension ?? '.output/firefox-mv3');
    await marionette.send('Addon:Install', { path: folder, temporary: true });
    return new Firefox(marionette, profile, browser, cleanUp);
  } catch (error) {
    browser.kill('SIGKILL');
    await end(browser);
    await cleanUp();
    throw error;
  }
}
