import { allowOnly, serialise } from '#lib/capture/allow-only.ts';
import type { Drawn } from '#lib/capture/pictures/draw.ts';
import { pictureAt, picturePlaces, settlePlaces } from '#lib/capture/pictures/places.ts';
import { readPictures } from '#lib/capture/pictures/read-pictures.ts';
import type { PictureReader } from '#lib/capture/pictures/reader.ts';
import type { ViewPart } from '#lib/capture/pictures/size.ts';
import { send } from '../send.ts';
import { shown } from './shown.ts';

/** Where a picture of the passage cannot be had, its alternative text stands in its place. */
export const passagePictures: PictureReader = async (passage, found, doc) => {
  const content = allowOnly(passage.html, doc);
  const numbers = picturePlaces(content).map(pictureAt);
  const got = await readPictures(
    numbers.map((number) => found[number]!),
    doc.defaultView!,
    (parts) => cutUnselected(doc, parts),
  );
  const byNumber = found.map((_, number) => got[numbers.indexOf(number)] ?? null);
  const pictures = settlePlaces(content, byNumber);
  return { passage: { text: passage.text, html: serialise(content) }, pictures };
};

/** A selection colours the pictures in it; it comes back afterwards. */
async function cutUnselected(doc: Document, parts: ViewPart[]): Promise<(Drawn | null)[]> {
  // A part of a frame's window is none of the tab's.
  if (doc.defaultView!.frameElement) return [];
  const selection = doc.getSelection()!;
  const ranges = Array.from({ length: selection.rangeCount }, (_, index) => selection.getRangeAt(index));
  selection.removeAllRanges();
  try {
    await shown(doc);
    return await send('takePictures', { parts });
  } catch {
    // The text alone is kept.
    return [];
  } finally {
    for (const range of ranges) selection.addRange(range);
  }
}
