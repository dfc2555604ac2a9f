import type { PageSize } from '#lib/capture/pdf/frame.ts';
import { titleOfPdf } from '#lib/capture/pdf/headings.ts';
import { LONGEST_AUTHOR, LONGEST_SITE, cut, oneLine } from '#lib/capture/limits.ts';
import { type AskPassword, type PDFDocumentProxy, type PDFPageProxy, openDocument } from './engine.ts';
import { textOfPage } from './page-text.ts';
import type { PdfFile, PdfSource } from './pdf-file.ts';

/** A PDF that is being read. */
export interface OpenPdf {
  doc: PDFDocumentProxy;
  file: PdfFile;
  source: PdfSource;
  firstSize: PageSize;
}

/** Opens a PDF and reads what it says of itself. Errors: those of openDocument. */
export async function openPdf(file: PdfFile, ask: AskPassword, signal: AbortSignal): Promise<OpenPdf> {
  const bytes = new Uint8Array(await file.bytes.arrayBuffer());
  const doc = await openDocument(bytes, ask, signal);
  const first = await doc.getPage(1);
  const claimed = await claimsOf(doc);
  const text = await textOfPage(first).catch(() => undefined);
  const source: PdfSource = {
    kind: 'pdf',
    url: file.url,
    title: titleOfPdf(claimed.title, text?.pieces ?? [], file.name) || file.name,
    site: file.url.startsWith('http')
      ? cut(new URL(file.url).hostname.replace(/^www\./, ''), LONGEST_SITE)
      : '',
    author: cut(claimed.author, LONGEST_AUTHOR),
    published: '',
    licence: '',
  };
  return { doc, file, source, firstSize: sizeOf(first) };
}

async function claimsOf(doc: PDFDocumentProxy): Promise<{ title: string; author: string }> {
  const info = await doc.getMetadata().then(
    ({ info }) => info as Record<string, unknown>,
    () => ({}) as Record<string, unknown>,
  );
  const field = (name: string) => (typeof info[name] === 'string' ? oneLine(info[name]) : '');
  return { title: field('Title'), author: field('Author') };
}

/** The size of a page as it is seen, in points. */
export function sizeOf(page: PDFPageProxy): PageSize {
  const { width, height } = page.getViewport({ scale: 1 });
  return { width, height };
}
