/** What a page looks like to the main job, whichever browser drives it. Functions run in the page and see no variables. */
export interface PageDriver {
  run<A extends unknown[], T>(script: (...args: A) => T | Promise<T>, ...args: A): Promise<T>;
  /** Clicks a point of the window with the real mouse. */
  clickAt(x: number, y: number): Promise<void>;
  /** Presses a key or a combination, as `Enter` or `Shift+Tab`. */
  press(keys: string): Promise<void>;
  /** Types text into whatever has the focus. */
  type(text: string): Promise<void>;
  screenshot(): Promise<Buffer>;
}

/** A tab: it can go somewhere, and the slip may stand in it. */
export interface TabDriver extends PageDriver {
  goto(url: string): Promise<void>;
  gotoDesk(hash?: string): Promise<void>;
  /** Presses the browser shortcut that opens the slip. */
  openSlip(): Promise<void>;
  /** Runs a function on the slip's closed shadow root; the root is null while no slip is open. */
  inSlip<A extends unknown[], T>(script: (root: ShadowRoot | null, ...args: A) => T, ...args: A): Promise<T>;
  /** Clicks the toolbar button with this tab in front. */
  openPopup(): Promise<PopupDriver>;
}

export interface PopupDriver extends PageDriver {
  close(): Promise<void>;
}

export interface BrowserDriver {
  name: 'Chromium' | 'Firefox';
  tab: TabDriver;
  /** Goes on in the tab that was opened last, such as by a link; `tab` is that one then. */
  toNewestTab(): Promise<void>;
  /** Closes the browser and opens it again on the same profile. */
  restart(): Promise<void>;
  /** Kills the browser's process and opens it again on the same profile. */
  crash(): Promise<void>;
  close(): Promise<void>;
}

/** Repeats a look until it gives something, and fails with what was looked for. */
export async function until<T>(
  what: string,
  look: () => Promise<T | false | null | undefined>,
  timeout = 15_000,
): Promise<T> {
  const deadline = Date.now() + timeout;
  let trouble: unknown;
  for (;;) {
    try {
      const found = await look();
      if (found) return found;
    } catch (error) {
      // A page that is on its way elsewhere cannot answer; the next look may.
      trouble = error;
    }
    if (Date.now() > deadline)
      throw new Error(`Waited ${timeout} ms in vain for: ${what}${trouble ? ` (${String(trouble)})` : ''}`);
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
}

/** The text of a page as a person sees it. */
export const textOf = (page: PageDriver): Promise<string> => page.run(() => document.body.innerText);

/** Waits until a page shows a text. */
export async function sees(page: PageDriver, text: string): Promise<void> {
  await until(`“${text}” on the page`, async () => (await textOf(page)).includes(text));
}

/** Clicks a button, link or summary by the words on it (its accessible name begins with them). */
export async function click(page: PageDriver, name: string, within = 'body'): Promise<void> {
  const point = await until(`a button or link “${name}”`, () =>
    page.run(
      async (wanted, area) => {
        const found = [...document.querySelectorAll(`${area} :is(button, a, summary, label.button)`)].find(
          (one) => {
            const shown = (one.getAttribute('aria-label') ?? one.textContent).replace(/\s+/g, ' ').trim();
            return shown.startsWith(wanted) && !one.hasAttribute('disabled');
          },
        );
        if (!found) return null;
        // The page may still be scrolling or growing: a person waits until it stands still.
        for (let before = NaN; ;) {
          found.scrollIntoView({ block: 'center', behavior: 'instant' });
          await new Promise((resolve) => setTimeout(resolve, 50));
          const { x, y, width, height } = found.getBoundingClientRect();
          if (!found.isConnected) return null;
          if (y === before) return { x: x + width / 2, y: y + height / 2 };
          before = y;
        }
      },
      name,
      within,
    ),
  );
  await page.clickAt(point.x, point.y);
}

/** Puts text into the field with this label, the way a paste does. */
export async function fill(page: PageDriver, label: string, text: string, within = 'body'): Promise<void> {
  await until(`a field “${label}”`, () =>
    page.run(
      (wanted, value, area) => {
        const named = [...document.querySelectorAll<HTMLLabelElement>(`${area} label`)].find(
          (one) => one.textContent.trim() === wanted,
        );
        const field = named?.control as HTMLInputElement | HTMLTextAreaElement | null | undefined;
        if (!field) return false;
        field.focus();
        if (field.type === 'date') {
          // A date field takes no pasted text.
          (field as HTMLInputElement).valueAsDate = new Date(value);
          field.dispatchEvent(new Event('input', { bubbles: true }));
          return true;
        }
        field.select();
        if (value.length < 5000) return document.execCommand('insertText', false, value);
        // Chromium takes seconds over a long insertion by script.
        field.setRangeText(value);
        return field.dispatchEvent(new Event('input', { bubbles: true }));
      },
      label,
      text,
      within,
    ),
  );
}

/** Selects what an element holds: a click into it, which gives the page the keyboard, then the whole of it. */
export async function select(page: PageDriver, css: string): Promise<void> {
  const corner = await until(`${css} on the page`, () =>
    page.run((selector) => {
      const element = document.querySelector(selector);
      if (!element) return null;
      element.scrollIntoView({ block: 'center', behavior: 'instant' });
      const box = element.getBoundingClientRect();
      return { x: box.x + 1, y: Math.max(1, box.y + 1) };
    }, css),
  );
  await page.clickAt(corner.x, corner.y);
  await until('the page to have the keyboard', () => page.run(() => document.hasFocus()));
  await page.run((selector) => getSelection()!.selectAllChildren(document.querySelector(selector)!), css);
}
