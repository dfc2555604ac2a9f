import type { Browser } from 'wxt/browser';
import { browser } from 'wxt/browser';
import { WISH_KEY, type Wish } from '#lib/model/wish.ts';
import { StudentError } from '#lib/model/student-error.ts';
import { askReader } from '#lib/ui/pdf/ask-reader.ts';
import { rememberTrouble } from '#lib/ui/trouble.ts';

// Chromium tells of the shortcut a little before the tab is granted: measured, 3 of 96 first tries with a real keyboard
// were refused, and none after 13 ms.
const TRIES = 10;
const PAUSE = 20;

/** The script that each wish begins with. */
const SCRIPTS = { selection: '/clip.js', moment: '/clip.js', frame: '/frame.js' } as const;

/**
 * Puts the clip script into a tab, which opens the slip on what was wished for; to frame a diagram, the script that
 * lets the student draw the frame first.
 * Errors: StudentError `errorPageClosed` where the browser lets no extension in.
 */
export async function openSlip(tabId: number, wish: Wish): Promise<void> {
  if (await askReader(tabId, wish)) return;
  for (let tries = 1; ; tries++) {
    if (await injected(tabId, wish, SCRIPTS[wish])) return;
    if (tries === TRIES) throw new StudentError('errorPageClosed');
    await new Promise((resolve) => setTimeout(resolve, PAUSE));
  }
}

/** Puts a script that is seldom needed into the tab, for the clip script in it. Errors: `errorPageClosed`. */
export async function addScript(
  tab: Browser.tabs.Tab | undefined,
  script: 'pictures' | 'moment' | 'drawn-maths',
): Promise<null> {
  if (!(await injected(tab!.id!, null, `/${script}.js`))) throw new StudentError('errorPageClosed');
  return null;
}

/** Opens the slip on the diagram that was framed in the tab. Errors: `errorPageClosed`. */
export async function showFramed(tab: Browser.tabs.Tab | undefined): Promise<null> {
  if (!(await injected(tab!.id!, 'frame', '/clip.js'))) throw new StudentError('errorPageClosed');
  return null;
}

type Script = '/clip.js' | '/frame.js' | '/moment.js' | '/pictures.js' | '/drawn-maths.js';

/** Whether the script went in. Chromium refuses a page of its own with an error, Firefox with an empty answer. */
async function injected(tabId: number, wish: Wish | null, script: Script): Promise<boolean> {
  const target = { tabId };
  const leaveWish = (key: string, value: string) => void Object.assign(globalThis, { [key]: value });
  try {
    if (wish !== null)
      await browser.scripting.executeScript({ target, func: leaveWish, args: [WISH_KEY, wish] });
    const answers = await browser.scripting.executeScript({ target, files: [script] });
    return answers.some(Boolean);
  } catch {
    return false;
  }
}

/**
 * The same for a shortcut or a menu, where no page of ours is open to show an error: the popup opens and says it, or
 * the desk where the browser does not let the popup open by itself.
 */
export async function openSlipOrSay(tabId: number | undefined): Promise<void> {
  try {
    if (tabId === undefined) throw new StudentError('errorPageClosed');
    await openSlip(tabId, 'selection');
  } catch (error) {
    await rememberTrouble(error);
    await browser.action
      .openPopup()
      .catch(() => browser.tabs.create({ url: browser.runtime.getURL('/desk.html') }));
  }
}
