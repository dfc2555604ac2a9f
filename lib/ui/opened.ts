import { browser } from 'wxt/browser';

const KEY = 'opened';
const LIFETIME = 60_000;

interface Opened {
  url: string;
  clipId: string;
  at: number;
}

/** Remembers that the student opens a source through one of its clips, for the script that shows it there. */
export async function rememberOpened(url: string, clipId: string): Promise<void> {
  const opened: Opened = { url, clipId, at: Date.now() };
  await browser.storage.session.set({ [KEY]: opened });
}

/** The clip through which this address was opened a moment ago, once; null when there is none. */
export async function takeOpened(url: string): Promise<string | null> {
  const { [KEY]: opened } = (await browser.storage.session.get(KEY)) as { [KEY]?: Opened };
  if (opened?.url !== url) return null;
  await browser.storage.session.remove(KEY);
  return Date.now() - opened.at < LIFETIME ? opened.clipId : null;
}
