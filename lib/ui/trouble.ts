import { browser } from 'wxt/browser';
import { StudentError } from '#lib/model/student-error.ts';
import { tell, t } from './text.ts';

const KEY = 'trouble';
const LIFETIME = 30_000;

/** Keeps what to tell the student until a page of ours opens: until the browser closes at most. */
export async function rememberTrouble(error: unknown): Promise<void> {
  const text = error instanceof StudentError ? tell(error) : t('errorUnexpected', String(error));
  await browser.storage.session.set({ [KEY]: { text, at: Date.now() } });
}

/** What is still to be told, once; null when there is nothing or it is stale. */
export async function takeTrouble(): Promise<string | null> {
  const { [KEY]: trouble } = await browser.storage.session.get(KEY);
  if (trouble === undefined) return null;
  await browser.storage.session.remove(KEY);
  const { text, at } = trouble as { text: string; at: number };
  return Date.now() - at < LIFETIME ? text : null;
}
