import type { Browser } from 'wxt/browser';
import { browser } from 'wxt/browser';
import { type ViewPart, keptSize } from '#lib/capture/pictures/size.ts';
import { HEAVIEST_PICTURE, type Picture, type PictureDraft } from '#lib/model/picture.ts';
import { StudentError } from '#lib/model/student-error.ts';

/** The picture behind a data URL, as it is stored. */
export function pictureOf({
  dataUrl,
  ...rest
}: PictureDraft): Pick<Picture, 'bytes' | 'type' | 'width' | 'height' | 'alt'> {
  const type = dataUrl.slice('data:'.length, dataUrl.indexOf(';')) as Picture['type'];
  return { ...rest, type, bytes: blobOf(dataUrl, type) };
}

function blobOf(dataUrl: string, type: string): Blob {
  const characters = atob(dataUrl.slice(dataUrl.indexOf(',') + 1));
  return new Blob([Uint8Array.from(characters, (character) => character.charCodeAt(0))], { type });
}

type Cut = Omit<PictureDraft, 'alt'>;

/**
 * Cuts parts out of what a tab shows now, at the resolution of the screen; null for each part that is not in view.
 * Errors: StudentError `errorPictureHidden`, `errorPictureRefused`, `errorPictureHeavy`.
 */
export async function takePictures(
  tab: Browser.tabs.Tab | undefined,
  parts: readonly ViewPart[],
): Promise<(Cut | null)[]> {
  const shot = await createImageBitmap(blobOf(await shoot(tab), 'image/png'));
  try {
    const cuts: (Cut | null)[] = [];
    for (const part of parts) cuts.push(await cutOut(shot, part));
    return cuts;
  } finally {
    shot.close();
  }
}

/** Chromium lets an extension take two pictures a second. */
const TRIES = 3;
const PAUSE = 600;

async function shoot(tab: Browser.tabs.Tab | undefined): Promise<string> {
  for (let tries = 1; ; tries++) {
    const now = tab?.id === undefined ? undefined : await browser.tabs.get(tab.id);
    if (!now?.active) throw new StudentError('errorPictureHidden');
    try {
      return await browser.tabs.captureVisibleTab(now.windowId, { format: 'png' });
    } catch (error) {
      if (tries === TRIES || !/quota/i.test(String(error))) throw new StudentError('errorPictureRefused');
      await new Promise((resolve) => setTimeout(resolve, PAUSE));
    }
  }
}

async function cutOut(shot: ImageBitmap, part: ViewPart): Promise<Cut | null> {
  const left = Math.max(0, Math.round(part.left * shot.width));
  const top = Math.max(0, Math.round(part.top * shot.height));
  const right = Math.min(shot.width, Math.round((part.left + part.width) * shot.width));
  const bottom = Math.min(shot.height, Math.round((part.top + part.height) * shot.height));
  const [width, height] = [right - left, bottom - top];
  if (width < 1 || height < 1) return null;
  const size = keptSize({ width, height }, { width, height }, 1);
  const canvas = new OffscreenCanvas(size.width, size.height);
  const pen = canvas.getContext('2d')!;
  pen.imageSmoothingQuality = 'high';
  pen.drawImage(shot, left, top, width, height, 0, 0, size.width, size.height);
  return { dataUrl: await addressOf(await encode(canvas)), ...size };
}

/** A PNG up to this weight is kept as it is; a heavier one only where WebP would not halve it. */
const LIGHT = 500_000;

async function encode(canvas: OffscreenCanvas): Promise<Blob> {
  const png = await canvas.convertToBlob({ type: 'image/png' });
  if (png.size <= LIGHT) return png;
  const webp = await canvas.convertToBlob({ type: 'image/webp', quality: 0.9 });
  const lighter = webp.type === 'image/webp' && webp.size < png.size / 2 ? webp : png;
  if (lighter.size > HEAVIEST_PICTURE) throw new StudentError('errorPictureHeavy');
  return lighter;
}

function addressOf(blob: Blob): Promise<string> {
  return new Promise((done, fail) => {
    const reader = new FileReader();
    reader.onload = () => done(reader.result as string);
    reader.onerror = () => fail(reader.error as DOMException);
    reader.readAsDataURL(blob);
  });
}
