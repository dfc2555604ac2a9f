import { StudentError } from '#lib/model/student-error.ts';
import type { PageOfText } from '#lib/syllabus/bring-in/specification/read-specification.ts';
import { openDocument } from '../../pdf/engine.ts';
import { sizeOf } from '../../pdf/open-pdf.ts';
import { textOfPage } from '../../pdf/page-text.ts';

/** How far the reading has come. */
export interface Progress {
  page: number;
  of: number;
}

/**
 * Reads the text of a PDF page by page. The page stays usable meanwhile, since pdf.js works beside it. When `stop`
 * aborts, what was read till then is given.
 * Errors: those of openDocument; StudentError `errorSyllabusLocked` for a file with a password.
 */
export async function readPdf(
  bytes: Uint8Array,
  tell: (progress: Progress) => void,
  stop: AbortSignal,
): Promise<{ pages: PageOfText[]; of: number }> {
  const closing = new AbortController();
  try {
    const doc = await openUnlocked(bytes, closing.signal);
    const pages: PageOfText[] = [];
    for (let page = 1; page <= doc.numPages && !stop.aborted; page++) {
      tell({ page, of: doc.numPages });
      const proxy = await doc.getPage(page);
      // A damaged page reads as one without text: the others are still worth having.
      const { pieces } = await textOfPage(proxy).catch(() => ({ pieces: [] }));
      pages.push({ page, height: sizeOf(proxy).height, pieces });
      proxy.cleanup();
    }
    return { pages, of: doc.numPages };
  } finally {
    closing.abort();
  }
}

function openUnlocked(bytes: Uint8Array, signal: AbortSignal): ReturnType<typeof openDocument> {
  return new Promise((resolve, reject) => {
    const refuse = (): Promise<string> => {
      reject(new StudentError('errorSyllabusLocked'));
      return new Promise(() => {});
    };
    openDocument(bytes, refuse, signal).then(resolve, reject);
  });
}
