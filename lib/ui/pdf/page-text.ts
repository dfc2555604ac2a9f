import { type Piece, piecesOf } from '#lib/capture/pdf/piece.ts';
import type { PDFPageProxy } from './engine.ts';

export type TextContent = Awaited<ReturnType<PDFPageProxy['getTextContent']>>;

export interface PageText {
  content: TextContent;
  /** One for each run of text in `content`, in its order. */
  pieces: Piece[];
}

const read = new WeakMap<PDFPageProxy, Promise<PageText>>();

/** The text of a page, read once. */
export function textOfPage(page: PDFPageProxy): Promise<PageText> {
  let text = read.get(page);
  if (!text) {
    text = page.getTextContent().then((content) => ({
      content,
      pieces: piecesOf(content.items, page.pageNumber, page.getViewport({ scale: 1 }).transform),
    }));
    read.set(page, text);
  }
  return text;
}
