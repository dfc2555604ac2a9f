import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { BrowserDriver, PopupDriver, TabDriver } from './driver.ts';
import { type Firefox, type FirefoxOptions, launchFirefox } from './firefox.ts';

/** Clicks a point of whatever the actions reach: the page, or the browser's window. */
const pointer = (x: number, y: number) => [
  {
    type: 'pointer',
    id: 'mouse',
    parameters: { pointerType: 'mouse' },
    actions: [
      { type: 'pointerMove', x: Math.round(x), y: Math.round(y), origin: 'viewport' },
      { type: 'pointerDown', button: 0 },
      { type: 'pointerUp', button: 0 },
    ],
  },
];

/** Key presses, one for each character. */
const typing = (text: string) => [
  {
    type: 'key',
    id: 'keyboard',
    actions: [...text].flatMap((value) => [
      { type: 'keyDown', value },
      { type: 'keyUp', value },
    ]),
  },
];

function tabDriver(firefox: Firefox): TabDriver {
  return {
    run: (script, ...args) => firefox.run(script, ...args),
    clickAt: (x, y) => firefox.performActions(pointer(x, y)),
    press: (keys) => firefox.press(keys),
    type: (text) => firefox.performActions(typing(text)),
    screenshot: () => firefox.screenshot(),
    goto: (url) => firefox.navigate(url),
    gotoDesk: async (hash = '') => {
      // Through an empty page, since an address that differs in its last part only loads nothing anew.
      await firefox.navigate('about:blank');
      await firefox.openExtensionPage(`desk.html${hash}`);
    },
    openSlip: () => firefox.pressShortcut('Alt+K'),
    inSlip: async (script, ...args) => {
      const body = `const slip = document.querySelector('plumbline-slip');
        return (${script.toString()})(slip && slip.openOrClosedShadowRoot, ...arguments)`;
      const params = { script: body, args, sandbox: 'system' };
      const answer = await firefox.marionette.send<{ value: unknown }>('WebDriver:ExecuteScript', params);
      return answer.value as never;
    },
    openPopup: async (): Promise<PopupDriver> => {
      const popup = await firefox.openToolbarPopup();
      return {
        run: (script, ...args) => popup.run(script, ...args),
        // The mouse of the remote protocol does not reach into the panel: the element there is clicked by script.
        clickAt: async (x, y) => {
          await popup.run((left, top) => (document.elementFromPoint(left, top) as HTMLElement).click(), x, y);
        },
        press: (keys) => firefox.pressShortcut(keys),
        type: (text) => firefox.inChrome(() => firefox.performActions(typing(text))),
        screenshot: () => firefox.inChrome(() => firefox.screenshot()),
        close: () => popup.close(),
      };
    },
  };
}

/** The main job's hands in Firefox. */
export async function driveFirefox(
  options: FirefoxOptions = {},
): Promise<BrowserDriver & { readonly firefox: Firefox }> {
  const profile = options.profile ?? (await mkdtemp(join(tmpdir(), 'plumbline-job-')));
  const start = async () => {
    const firefox = await launchFirefox({ ...options, profile });
    return { firefox, tab: tabDriver(firefox) };
  };
  let now = await start();
  return {
    name: 'Firefox',
    get tab() {
      return now.tab;
    },
    get firefox() {
      return now.firefox;
    },
    async toNewestTab() {
      await now.firefox.switchTo((await now.firefox.tabs()).at(-1)!);
    },
    async restart() {
      await now.firefox.close();
      now = await start();
    },
    async crash() {
      await now.firefox.kill();
      now = await start();
    },
    async close() {
      await now.firefox.close();
      if (!options.profile) await rm(profile, { recursive: true, force: true, maxRetries: 5 });
    },
  };
}
