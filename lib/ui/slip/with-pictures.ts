import { PICTURES_KEY, type PictureReader } from '#lib/capture/pictures/reader.ts';
import { send } from '../send.ts';

/** Reads the pictures of a passage with a script of its own, which the background puts into the page if there are any. */
export const withPictures: PictureReader = async (passage, found, doc) => {
  if (found.length === 0) return { passage, pictures: [] };
  const world = globalThis as { [PICTURES_KEY]?: PictureReader };
  if (!world[PICTURES_KEY]) await send('addScript', { script: 'pictures' });
  return world[PICTURES_KEY]!(passage, found, doc);
};
