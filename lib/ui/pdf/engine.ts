import type { PDFDocumentProxy, PDFPageProxy } from 'pdfjs-dist';
import { browser } from 'wxt/browser';
import { StudentError } from '#lib/model/student-error.ts';
import { DataFactory } from './data-factory.ts';

export type { PDFDocumentProxy, PDFPageProxy };

/** Older browsers that this extension runs in lack what the other build of pdf.js needs. */
const load = () => import('pdfjs-dist/legacy/build/pdf.mjs');

/** pdf.js, loaded when the first file is opened. */
export async function pdfjs(): ReturnType<typeof load> {
  const library = await load();
  library.GlobalWorkerOptions.workerSrc = browser.runtime.getURL('/pdfjs/worker.mjs' as '/desk.html');
  return library;
}

/** Asks the student for the password of a file; `isAgain` when the one before was wrong. */
export type AskPassword = (isAgain: boolean) => Promise<string>;

/**
 * Opens a PDF.
 * Errors: StudentError `errorPdfEmpty`, `errorPdfNone` (not a PDF at all) or `errorPdfBroken`.
 */
export async function openDocument(
  bytes: Uint8Array,
  ask: AskPassword,
  signal: AbortSignal,
): Promise<PDFDocumentProxy> {
  if (bytes.length === 0) throw new StudentError('errorPdfEmpty');
  const looksLikeOne = hasHeader(bytes);
  const { getDocument, PasswordResponses, VerbosityLevel } = await pdfjs();
  const task = getDocument({
    data: bytes,
    verbosity: VerbosityLevel.ERRORS,
    BinaryDataFactory: DataFactory,
    useWorkerFetch: false,
    // The same on every device: what is framed here looks as it did where it was kept.
    useSystemFonts: false,
    // The decoder of JPEG 2000 is imported from here; nothing else is.
    wasmUrl: browser.runtime.getURL('/pdfjs/' as '/desk.html'),
    useWasm: false,
    isEvalSupported: false,
  });
  task.onPassword = (answer: (password: string) => void, reason: number) => {
    void ask(reason === PasswordResponses.INCORRECT_PASSWORD).then(answer);
  };
  signal.addEventListener('abort', () => void task.destroy());
  try {
    const doc = await task.promise;
    if (doc.numPages === 0) throw new Error('no pages');
    // A file may open and have no page that can be read.
    await doc.getPage(1);
    return doc;
  } catch (cause) {
    void task.destroy();
    throw new StudentError(looksLikeOne ? 'errorPdfBroken' : 'errorPdfNone', messageOf(cause));
  }
}

const messageOf = (cause: unknown): string => (cause instanceof Error ? cause.message : String(cause));

/** "%PDF-" stands within the first kilobyte of every PDF (ISO 32000, annex H). */
export function hasHeader(bytes: Uint8Array): boolean {
  return String.fromCharCode(...bytes.subarray(0, 1024)).includes('%PDF-');
}
