import type { Firefox } from './firefox.ts';
import type { Marionette } from './marionette.ts';
import { setTimeout as sleep } from 'node:timers/promises';

/** A function to run in the browser, or the body of one. */
export type Script<A extends unknown[], T> = string | ((...args: A) => T | Promise<T>);

/** The body of a function that runs `script` with its own arguments. */
export function scriptBody<A extends unknown[], T>(script: Script<A, T>): string {
  return typeof script === 'string' ? script : `return (${script.toString()})(...arguments)`;
}

// WebDriver's code points for keys that type nothing.
const KEYS: Record<string, string> = {
  Shift: '\uE008',
  Ctrl: '\uE009',
  Control: '\uE009',
  Alt: '\uE00A',
  Meta: '\uE03D',
  Enter: '\uE007',
  Tab: '\uE004',
  Escape: '\uE00C',
  Backspace: '\uE003',
  Delete: '\uE017',
  ArrowLeft: '\uE012',
  ArrowUp: '\uE013',
  ArrowRight: '\uE014',
  ArrowDown: '\uE015',
  Home: '\uE011',
  End: '\uE010',
  Space: ' ',
};

/** WebDriver key actions for a combination such as `Ctrl+Shift+k`. */
export function keyActions(combination: string): object[] {
  const names = combination.split('+');
  // Without Shift a key types a small letter, whatever the case it is written in.
  const keys = names.map((name) => KEYS[name] ?? (names.length > 1 ? name.toLowerCase() : name));
  const down = keys.map((value) => ({ type: 'keyDown', value }));
  const up = keys.toReversed().map((value) => ({ type: 'keyUp', value }));
  return [{ type: 'key', id: 'keyboard', actions: [...down, ...up] }];
}

/** Allows what the add-on asks for, in the question that the browser shows. */
export async function allow(firefox: Firefox): Promise<void> {
  await firefox.inChrome(async () => {
    await firefox.find('#notification-popup[panelopen] .popup-notification-primary-button');
    // A click in the first half second, which may have been meant for what was there before, does nothing.
    for (let tries = 0; tries < 50; tries++) {
      const isAsking = await firefox.run(() => {
        const panel = document.querySelector('#notification-popup[panelopen]');
        panel?.querySelector<HTMLElement>('.popup-notification-primary-button')?.click();
        return panel !== null;
      });
      if (!isAsking) return;
      await sleep(200);
    }
    throw new Error('The browser goes on asking');
  });
}

/** An element of a page in Firefox. */
export class FirefoxElement {
  #marionette: Marionette;
  #id: string;
  /** What to pass as an argument of a script. */
  readonly reference: Record<string, string>;

  constructor(marionette: Marionette, reference: Record<string, string>) {
    this.#marionette = marionette;
    this.reference = reference;
    this.#id = Object.values(reference)[0]!;
  }

  /** Scrolls to the element and clicks its middle. */
  async click(): Promise<void> {
    await this.#marionette.send('WebDriver:ElementClick', { id: this.#id });
  }

  /** Focuses the element and types. */
  async type(text: string): Promise<void> {
    await this.#marionette.send('WebDriver:ElementSendKeys', { id: this.#id, text });
  }

  /** The text as it is shown. */
  async text(): Promise<string> {
    return this.#value('WebDriver:GetElementText');
  }

  /** An attribute as written in the document, or null. */
  async attribute(name: string): Promise<string | null> {
    return this.#value('WebDriver:GetElementAttribute', { name });
  }

  /** A property of the element object, such as `value` or `checked`. */
  async property<T = unknown>(name: string): Promise<T> {
    return this.#value('WebDriver:GetElementProperty', { name });
  }

  async #value<T>(command: string, params: object = {}): Promise<T> {
    return (await this.#marionette.send<{ value: T }>(command, { id: this.#id, ...params })).value;
  }
}

// Runs in the browser's window. A popup is not a tab, so the remote protocol cannot switch to it; a frame script
// can reach into it, and a sandbox there is free of the page's content security policy.
const RUN_IN_POPUP = `
  const [body, args] = arguments;
  const popup = document.querySelector('panel[panelopen=true] browser.webextension-popup-browser');
  if (!popup) throw new Error('The popup is closed');
  const reply = 'plumbline:' + Math.random();
  const code = 'const args = ' + JSON.stringify(JSON.stringify(args)) + ';' +
    'const code = ' + JSON.stringify('(async function () {' + body + '})') + ';' +
    '(async () => {' +
    '  const sandbox = new Cu.Sandbox(content, { sandboxPrototype: content, wantXrays: false });' +
    '  sandbox.args = args;' +
    '  const source = code + ".apply(null, JSON.parse(args)).then(v => JSON.stringify({ value: v }))";' +
    '  return Cu.evalInSandbox(source, sandbox);' +
    '})().catch(e => JSON.stringify({ error: String(e) }))' +
    '.then(answer => sendAsyncMessage(' + JSON.stringify(reply) + ', answer));';
  return new Promise(done => {
    popup.messageManager.addMessageListener(reply, message => done(JSON.parse(message.data)));
    popup.messageManager.loadFrameScript('data:,' + encodeURIComponent(code), false);
  });
`;

/** The add-on's open toolbar popup. */
export class FirefoxPopup {
  #firefox: Firefox;

  constructor(firefox: Firefox) {
    this.#firefox = firefox;
  }

  /** Runs a function (it cannot see variables outside it) or a script body in the popup. */
  async run<A extends unknown[], T>(script: Script<A, T>, ...args: A): Promise<T> {
    return this.#firefox.inChrome(() => this.#run(script, args));
  }

  /** Waits until the popup's document is there; only for use in the chrome context. */
  async waitUntilLoaded(url: string): Promise<void> {
    const deadline = Date.now() + 5000;
    while ((await this.#run('return document.readyState + " " + location.href', [])) !== `complete ${url}`) {
      if (Date.now() > deadline) throw new Error('The popup did not load within 5 s');
      await sleep(50);
    }
  }

  /** Gives the popup the keyboard, as a click into it would; only for use in the chrome context. */
  async focus(): Promise<void> {
    await this.#firefox.run(
      `document.querySelector('panel[panelopen=true] browser.webextension-popup-browser').focus()`,
    );
  }

  /** Closes the popup as the Escape key would. */
  async close(): Promise<void> {
    await this.#firefox.inChrome(() => {
      return this.#firefox.run(`document.querySelector('panel[panelopen=true]')?.hidePopup()`);
    });
  }

  async #run<A extends unknown[], T>(script: Script<A, T>, args: A): Promise<T> {
    const answer = await this.#firefox.run<unknown[], { value: T; error?: string }>(
      RUN_IN_POPUP,
      scriptBody(script),
      args,
    );
    if (answer.error) throw new Error(answer.error);
    return answer.value;
  }
}
