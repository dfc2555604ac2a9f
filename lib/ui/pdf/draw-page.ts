import { type Rect } from '#lib/capture/pdf/place.ts';
import { printScale } from '#lib/capture/pdf/frame.ts';
import type { TextLayerOf } from '#lib/capture/pdf/selected.ts';
import { HEAVIEST_PICTURE, type PictureDraft } from '#lib/model/picture.ts';
import { type PDFPageProxy, pdfjs } from './engine.ts';
import { textOfPage } from './page-text.ts';

/** Browsers refuse larger canvases, or draw them blank. */
const MOST_PIXELS = 16_000_000;

/** Draws a page at so many pixels a point and gives the canvas; null when it was called off. */
export async function drawPage(
  page: PDFPageProxy,
  scale: number,
  signal: AbortSignal,
): Promise<HTMLCanvasElement | null> {
  const size = page.getViewport({ scale: scale * devicePixelRatio });
  const fitting = Math.min(1, Math.sqrt(MOST_PIXELS / (size.width * size.height)));
  const viewport = page.getViewport({ scale: scale * devicePixelRatio * fitting });
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.floor(viewport.width));
  canvas.height = Math.max(1, Math.floor(viewport.height));
  const task = page.render({ canvas, viewport });
  const stop = () => task.cancel();
  signal.addEventListener('abort', stop);
  try {
    await task.promise;
    return signal.aborted ? null : canvas;
  } catch (error) {
    if (signal.aborted) return null;
    throw error;
  } finally {
    signal.removeEventListener('abort', stop);
  }
}

/** Lays a page's text over it, to be selected. */
export async function layText(
  page: PDFPageProxy,
  container: HTMLElement,
  signal: AbortSignal,
): Promise<TextLayerOf | null> {
  const [{ TextLayer }, { content, pieces }] = await Promise.all([pdfjs(), textOfPage(page)]);
  if (signal.aborted) return null;
  container.replaceChildren();
  const viewport = page.getViewport({ scale: 1 });
  const layer = new TextLayer({ textContentSource: content, container, viewport });
  await layer.render();
  return signal.aborted ? null : { page: page.pageNumber, pieces, elements: layer.textDivs };
}

/** A picture of a part of a page, drawn as for print. */
export async function pictureOfFrame(page: PDFPageProxy, frame: Rect, alt: string): Promise<PictureDraft> {
  for (let scale = printScale(frame); ; scale *= 0.7) {
    const canvas = document.createElement('canvas');
    canvas.width = Math.max(1, Math.round(frame.width * scale));
    canvas.height = Math.max(1, Math.round(frame.height * scale));
    const viewport = page.getViewport({ scale, offsetX: -frame.left * scale, offsetY: -frame.top * scale });
    // Drawing for print waits for no screen, so that it goes on in a tab that is not in front.
    await page.render({ canvas, viewport, intent: 'print' }).promise;
    const dataUrl = lightest(canvas);
    if (dataUrl.length * 0.75 <= HEAVIEST_PICTURE)
      return { dataUrl, width: canvas.width, height: canvas.height, alt };
  }
}

/** A drawing is lightest and sharpest as PNG; a photograph that would be too heavy so goes as JPEG. */
function lightest(canvas: HTMLCanvasElement): string {
  const png = canvas.toDataURL('image/png');
  return png.length * 0.75 <= HEAVIEST_PICTURE ? png : canvas.toDataURL('image/jpeg', 0.85);
}
