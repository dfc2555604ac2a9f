import { HEAVIEST_PICTURE } from './limits.ts';
import { type Size, keptSize } from './size.ts';
import { svgAddress } from './svg-address.ts';

/** A picture's bytes as a data URL, and its size in pixels. */
export interface Drawn extends Size {
  dataUrl: string;
}

/** Below this many characters a PNG is kept as it is; above, only where WebP would not halve it. */
const LIGHT = 700_000;

/**
 * Draws a picture that the page shows already; nothing is asked of the network. Null where its pixels may not be read
 * (they are another site's), where it is empty, or where it is too heavy.
 */
export async function drawPicture(element: Element, view: Window): Promise<Drawn | null> {
  try {
    const source = element.localName === 'svg' ? await loadSvg(element, view) : (element as Drawable);
    return source && draw(source, element, view);
  } catch {
    // A canvas that holds another site's pixels refuses to be read.
    return null;
  }
}

type Drawable = HTMLImageElement | HTMLCanvasElement | HTMLVideoElement;

function naturalSize(source: Drawable): Size {
  if ('videoWidth' in source) return { width: source.videoWidth, height: source.videoHeight };
  if ('naturalWidth' in source) return { width: source.naturalWidth, height: source.naturalHeight };
  return source;
}

function draw(source: Drawable, element: Element, view: Window): Drawn | null {
  const shown = element.getBoundingClientRect();
  const natural = element.localName === 'svg' ? { width: 0, height: 0 } : naturalSize(source);
  const { width, height } = keptSize(natural, shown, view.devicePixelRatio);
  const canvas = element.ownerDocument.createElement('canvas');
  Object.assign(canvas, { width, height });
  const pen = canvas.getContext('2d')!;
  pen.imageSmoothingQuality = 'high';
  pen.drawImage(source, 0, 0, width, height);
  // A drawing made by the graphics card may be gone once it was shown.
  if (element.localName === 'canvas' && !pen.getImageData(0, 0, width, height).data.some(Boolean))
    return null;
  pen.globalCompositeOperation = 'destination-over';
  pen.fillStyle = backgroundOf(element, view);
  pen.fillRect(0, 0, width, height);
  const dataUrl = encode(canvas);
  return dataUrl.length > HEAVIEST_PICTURE * 1.3 ? null : { dataUrl, width, height };
}

function encode(canvas: HTMLCanvasElement): string {
  const png = canvas.toDataURL('image/png');
  if (png.length < LIGHT) return png;
  const webp = canvas.toDataURL('image/webp', 0.9);
  return webp.length < png.length / 2 ? webp : png;
}

/** The colour behind it: black lines on nothing could not be seen on a dark sheet, nor white ones on a light one. */
function backgroundOf(element: Element, view: Window): string {
  for (let at: Element | null = element; at; at = at.parentElement) {
    const colour = view.getComputedStyle(at).backgroundColor;
    if (colour && !/transparent|, 0\)$|\/ 0\)$/.test(colour)) return colour;
  }
  return '#fff';
}

async function loadSvg(svg: Element, view: Window): Promise<HTMLImageElement | null> {
  const address = svgAddress(svg, view);
  if (!address) return null;
  const image = svg.ownerDocument.createElement('img');
  image.src = address;
  await image.decode();
  return image;
}
