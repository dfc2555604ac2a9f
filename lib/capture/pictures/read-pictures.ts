import type { PictureDraft } from '#lib/model/picture.ts';
import { type Drawn, drawPicture } from './draw.ts';
import { isWhollySeen } from './in-view.ts';
import { type ViewPart, partOfView } from './size.ts';
import { altOf } from './spot.ts';

/** Cuts parts out of what the window shows now; null for each that could not be had. */
export type Cutter = (parts: ViewPart[]) => Promise<(Drawn | null)[]>;

/**
 * The pictures behind these elements, without a request to the network: drawn again from what the page has loaded, or,
 * where the page may not be read so, cut out of what the window shows if the whole picture is in it. Null for the rest.
 */
export async function readPictures(
  elements: readonly Element[],
  view: Window,
  cutOut: Cutter,
): Promise<(PictureDraft | null)[]> {
  const drawn: (Drawn | null)[] = [];
  for (const element of elements) drawn.push(await drawPicture(element, view));
  const left = elements.filter((element, index) => !drawn[index] && isWhollySeen(element, view));
  const boxes = left.map((element) => partOfView(element.getBoundingClientRect(), view));
  const pieces = boxes.length > 0 ? await cutOut(boxes) : [];
  return elements.map((element, index) => {
    const picture = drawn[index] ?? pieces[left.indexOf(element)];
    return picture ? { ...picture, alt: altOf(element) } : null;
  });
}
