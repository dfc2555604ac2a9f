import { imageHeader } from '#lib/capture/own/image-header.ts';
import { keptSize } from '#lib/capture/pictures/size.ts';
import { HEAVIEST_PICTURE, PICTURE_TYPES, type PictureDraft } from '#lib/model/picture.ts';
import { StudentError } from '#lib/model/student-error.ts';
import { dataUrlOf } from '../../parts/data-url.ts';
import { sizeText } from '../../pdf/pdf-file.ts';

/** The heaviest file that is read as a picture, in bytes. */
export const HEAVIEST_IMAGE = 30_000_000;

/** The most pixels that are decoded: four bytes each, a quarter of a gigabyte. */
export const MOST_PIXELS = 64_000_000;

/** A PNG up to this weight, in bytes, is kept as it is; a heavier one only where WebP would not halve it. */
const LIGHT = 500_000;

/** How WebP is written: as clear as a photographed page needs. */
const QUALITY = 0.85;

/**
 * Reads an image file as a picture to be kept: upright, scaled to the longest side that is kept, and drawn anew, so
 * that nothing goes along but what is seen (no place, no camera, no time).
 * Errors: StudentError `errorOwnImageHeavy`, `errorOwnHeic`, `errorOwnNoImage`, `errorOwnImageLarge`,
 * `errorOwnImageDamaged`; the first two, and the size, are told before anything is decoded.
 */
export async function readPicture(file: Blob): Promise<Omit<PictureDraft, 'alt'>> {
  if (file.size > HEAVIEST_IMAGE)
    throw new StudentError('errorOwnImageHeavy', sizeText(file.size), sizeText(HEAVIEST_IMAGE));
  const header = imageHeader(new Uint8Array(await file.arrayBuffer()));
  if (!header) throw new StudentError('errorOwnNoImage');
  const bitmap = await decode(file, header);
  try {
    refuseLarge(bitmap);
    return await draw(bitmap);
  } finally {
    bitmap.close();
  }
}

async function decode(
  file: Blob,
  header: { type: string; width: number; height: number },
): Promise<ImageBitmap> {
  refuseLarge(header);
  try {
    return await createImageBitmap(file, { imageOrientation: 'from-image' });
  } catch {
    throw new StudentError(
      header.type === 'heic' || header.type === 'tiff' ? 'errorOwnHeic' : 'errorOwnImageDamaged',
    );
  }
}

function refuseLarge({ width, height }: { width: number; height: number }): void {
  const millions = (pixels: number) => Math.round(pixels / 1_000_000);
  if (width * height > MOST_PIXELS)
    throw new StudentError('errorOwnImageLarge', millions(width * height), millions(MOST_PIXELS));
}

async function draw(bitmap: ImageBitmap): Promise<Omit<PictureDraft, 'alt'>> {
  const { width, height } = keptSize(bitmap, bitmap, 1);
  const canvas = new OffscreenCanvas(width, height);
  const pen = canvas.getContext('2d')!;
  // What is see-through would be dark on a dark sheet.
  pen.fillStyle = '#fff';
  pen.fillRect(0, 0, width, height);
  pen.imageSmoothingQuality = 'high';
  pen.drawImage(bitmap, 0, 0, width, height);
  const bytes = await encode(canvas);
  return { dataUrl: await dataUrlOf(bytes), width, height };
}

async function encode(canvas: OffscreenCanvas): Promise<Blob> {
  const png = await canvas.convertToBlob({ type: 'image/png' });
  if (png.size <= LIGHT) return png;
  const webp = await canvas.convertToBlob({ type: 'image/webp', quality: QUALITY });
  const isKept = (PICTURE_TYPES as readonly string[]).includes(webp.type);
  const lighter = isKept && webp.size < png.size / 2 ? webp : png;
  if (lighter.size > HEAVIEST_PICTURE) throw new StudentError('errorPictureHeavy');
  return lighter;
}
