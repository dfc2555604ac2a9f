import type { Picture, PictureDraft } from '#lib/model/picture.ts';

/** The picture behind a data URL, as it is stored. */
export function pictureOf({
  dataUrl,
  ...rest
}: PictureDraft): Pick<Picture, 'bytes' | 'type' | 'width' | 'height' | 'alt'> {
  const type = dataUrl.slice('data:'.length, dataUrl.indexOf(';')) as Picture['type'];
  const characters = atob(dataUrl.slice(dataUrl.indexOf(',') + 1));
  const bytes = Uint8Array.from(characters, (character) => character.charCodeAt(0));
  return { ...rest, type, bytes: new Blob([bytes], { type }) };
}
