import type { Passage } from '#lib/model/clip.ts';
import type { PictureDraft } from '#lib/model/picture.ts';

/** Where the script that reads pictures leaves its function for the clip script, in the same world of the page. */
export const PICTURES_KEY = 'plumblinePictures';

/** Gives a passage with those of its pictures that could be had; `found` are the pictures of the page by number. */
export type PictureReader = (
  passage: Passage,
  found: readonly Element[],
  doc: Document,
) => Promise<{ passage: Passage; pictures: PictureDraft[] }>;
