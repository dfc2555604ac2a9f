import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** A run of text on a printed page; lengths in CSS pixels from the upper left corner of the page. */
export interface PrintedText {
  text: string;
  left: number;
  right: number;
  /** Where its letters stand. */
  baseline: number;
}

export interface PrintedPage {
  width: number;
  height: number;
  texts: PrintedText[];
}

const PX_PER_POINT = 96 / 72;

/** How many pages a PDF has, as pdf.js counts them. */
export async function pageCount(pdf: Uint8Array): Promise<number> {
  const task = getDocument({ data: new Uint8Array(pdf), verbosity: 0 });
  const { numPages } = await task.promise;
  await task.destroy();
  return numPages;
}

/** The pages of a PDF as pdf.js reads them: an independent count of what a browser printed. */
export async function printedPages(pdf: Uint8Array): Promise<PrintedPage[]> {
  const task = getDocument({ data: new Uint8Array(pdf), verbosity: 0, useSystemFonts: true });
  const document = await task.promise;
  const pages: PrintedPage[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number);
    const { width, height } = page.getViewport({ scale: PX_PER_POINT });
    const { items } = await page.getTextContent({ disableNormalization: true });
    const texts = items.flatMap((item): PrintedText[] => {
      if (!('str' in item) || item.str.trim() === '') return [];
      const left = item.transform[4] * PX_PER_POINT;
      const right = left + item.width * PX_PER_POINT;
      return [{ text: item.str, left, right, baseline: height - item.transform[5] * PX_PER_POINT }];
    });
    pages.push({ width, height, texts });
  }
  await task.destroy();
  return pages;
}
