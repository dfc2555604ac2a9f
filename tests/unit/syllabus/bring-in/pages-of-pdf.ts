import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { piecesOf } from '#lib/capture/pdf/piece.ts';
import type { PageOfText } from '#lib/syllabus/bring-in/specification/read-specification.ts';

/** The text of every page of a PDF, by pdf.js, as the desk takes it. */
export async function pagesOfPdf(bytes: Buffer): Promise<PageOfText[]> {
  const task = getDocument({ data: new Uint8Array(bytes), verbosity: 0, useSystemFonts: false });
  const doc = await task.promise;
  const pages: PageOfText[] = [];
  for (let page = 1; page <= doc.numPages; page++) {
    const proxy = await doc.getPage(page);
    const { height, transform } = proxy.getViewport({ scale: 1 });
    const { items } = await proxy.getTextContent();
    pages.push({ page, height, pieces: piecesOf(items, page, transform) });
  }
  await task.destroy();
  return pages;
}
