import { z } from 'zod';
import { browser } from 'wxt/browser';
import { HEAVIEST_FILE } from '#lib/model/source-file.ts';
import { WebAddress } from '#lib/model/source.ts';
import { StudentError } from '#lib/model/student-error.ts';
import { type PdfFile, nameOfAddress, sizeText } from './pdf-file.ts';

/** Bytes for one answer of the tab: answers are texts, and browsers limit them. A multiple of three, as base64 has it. */
const CHUNK = 3 * 512 * 1024;

const PDF_TYPE = /^application\/(x-)?pdf$/i;

const Found = z.object({
  type: z.string(),
  url: z.string().max(10_000),
  size: z.number().int().nonnegative(),
});
const Chunk = z.base64().max((CHUNK / 3) * 4);

/** Whether an address looks like that of a PDF. */
export const looksLikePdf = (address: string): boolean => /^(https?|file):[^?#]*\.pdf([?#]|$)/i.test(address);

/** Whether a tab shows a PDF, as far as the browser lets a script in to ask. */
export async function isPdfTab(tabId: number): Promise<boolean> {
  const type = await inTab(tabId, () => document.contentType, [], z.string()).catch(() => '');
  return PDF_TYPE.test(type);
}

/**
 * Takes the bytes of the PDF that a tab shows, in the tab itself. Only after the student's click on the toolbar, which
 * gives the extension that one tab.
 * Errors: StudentError `errorPdfTabClosed` where the browser lets no script in or has no bytes, `errorPdfTabNone` when
 * the tab shows something else, `errorPdfHeavy` with size and limit.
 */
export async function takeFromTab(tabId: number, progress: (share: number) => void): Promise<PdfFile> {
  try {
    const found = await inTab(tabId, takeBytes, [HEAVIEST_FILE], Found);
    if (!PDF_TYPE.test(found.type)) throw new StudentError('errorPdfTabNone');
    if (found.size > HEAVIEST_FILE)
      throw new StudentError('errorPdfHeavy', sizeText(found.size), sizeText(HEAVIEST_FILE));
    const url = new URL(found.url);
    url.hash = url.username = url.password = '';
    if (found.size === 0 || !WebAddress.safeParse(url.href).success)
      throw new StudentError('errorPdfTabClosed');
    const bytes = new Blob(await chunksOf(tabId, found.size, progress), { type: 'application/pdf' });
    return { name: nameOfAddress(url.href), bytes, url: url.href };
  } finally {
    await inTab(tabId, forget, [], z.unknown()).catch(() => undefined);
  }
}

async function chunksOf(
  tabId: number,
  size: number,
  progress: (share: number) => void,
): Promise<Uint8Array<ArrayBuffer>[]> {
  const chunks: Uint8Array<ArrayBuffer>[] = [];
  for (let from = 0; from < size; from += CHUNK) {
    const text = await inTab(tabId, giveChunk, [from, from + CHUNK], Chunk);
    chunks.push(Uint8Array.from(atob(text), (character) => character.charCodeAt(0)));
    progress(Math.min(1, (from + CHUNK) / size));
  }
  return chunks;
}

async function inTab<A extends (string | number)[], T>(
  tabId: number,
  func: (...args: A) => unknown,
  args: A,
  schema: z.ZodType<T>,
): Promise<T> {
  try {
    const [answer] = await browser.scripting.executeScript({ target: { tabId }, func, args });
    return schema.parse(answer?.result);
  } catch {
    throw new StudentError('errorPdfTabClosed');
  }
}

// What follows runs in the tab and sees nothing outside itself.

/**
 * The only request that this extension causes: the address that the tab shows, asked of the browser's own cache first.
 */
async function takeBytes(heaviest: number): Promise<z.infer<typeof Found>> {
  const found = { type: document.contentType, url: location.href, size: 0 };
  if (!/^application\/(x-)?pdf$/i.test(found.type)) return found;
  // eslint-disable-next-line no-restricted-globals -- the student's click asked for the bytes of this very address
  const answer = await fetch(location.href, { cache: 'force-cache' });
  if (!answer.ok) return found;
  const blob = await answer.blob();
  if (blob.size <= heaviest)
    Object.assign(globalThis, { plumblinePdf: new Uint8Array(await blob.arrayBuffer()) });
  return { ...found, size: blob.size };
}

function giveChunk(from: number, to: number): string {
  const bytes = (globalThis as { plumblinePdf?: Uint8Array }).plumblinePdf!.subarray(from, to);
  let text = '';
  for (let at = 0; at < bytes.length; at += 8192)
    text += String.fromCharCode(...bytes.subarray(at, at + 8192));
  return btoa(text);
}

function forget(): void {
  delete (globalThis as { plumblinePdf?: Uint8Array }).plumblinePdf;
}
