import { type Pasted, isRich, readPasted } from '#lib/capture/own/own-passage.ts';
import type { PictureDraft } from '#lib/model/picture.ts';
import { blobOfDataUrl } from '../../parts/data-url.ts';
import type { OwnPiece, PastedPiece, SheetPiece, TypedPiece } from './own-draft.ts';
import { typedPiece } from './own-draft.ts';
import { readPicture } from './read-picture.ts';

/** Rich text or formulas from the clipboard; null where plain words say the same. */
export function richIn(clipboard: Pick<DataTransfer, 'getData'>): Pasted | null {
  const html = clipboard.getData('text/html');
  if (html !== '') {
    const pasted = readPasted(html, document);
    return isRich(pasted) ? pasted : null;
  }
  // Word processors and formula editors put a formula on the clipboard as the text of its MathML.
  const text = clipboard.getData('text/plain').trim();
  const markup = /^(?:<\?xml[^>]*>\s*)?(<(?:\w+:)?math\b[\s\S]*<\/(?:\w+:)?math>)$/.exec(text)?.[1];
  return markup ? readPasted(markup.replace(/(<\/?)\w+:/g, '$1'), document) : null;
}

/** Images that were pasted or dropped as files. */
export const imagesIn = ({ files }: Pick<DataTransfer, 'files'>): File[] =>
  [...files].filter(({ type }) => type.startsWith('image/'));

/**
 * A piece of pasted rich text with its pictures read anew, and how many of them did not come along: behind an address,
 * damaged, or too large.
 */
export async function pastedPiece({
  html,
  pictures,
  lost,
}: Pasted): Promise<{ piece: PastedPiece; lost: number }> {
  const read = await readAll(pictures);
  return {
    piece: { kind: 'pasted', id: crypto.randomUUID(), html, pictures: read },
    lost: lost + read.filter((picture) => picture === null).length,
  };
}

/** Pictures given as data URLs, read anew; null for each that cannot be read. */
export const readAll = (pictures: Pasted['pictures']): Promise<(PictureDraft | null)[]> =>
  Promise.all(
    pictures.map(async ({ dataUrl, alt }) => {
      const bytes = blobOfDataUrl(dataUrl);
      if (!bytes) return null;
      try {
        return { ...(await readPicture(bytes)), alt };
      } catch {
        return null;
      }
    }),
  );

/** A photographed sheet. Errors: those of readPicture. */
export const sheetPiece = async (file: Blob): Promise<SheetPiece> => ({
  kind: 'sheet',
  id: crypto.randomUUID(),
  picture: { ...(await readPicture(file)), alt: '' },
  caption: '',
});

/** Puts pieces into a typed one, in the place of what is selected there. The last piece is always one to type in. */
export function insertInto(
  pieces: readonly OwnPiece[],
  typedId: string,
  { from, to }: { from: number; to: number },
  added: readonly OwnPiece[],
): OwnPiece[] {
  return endTyped(
    pieces.flatMap((piece) => {
      if (piece.id !== typedId || piece.kind !== 'typed') return [piece];
      const [before, after] = [piece.text.slice(0, from), piece.text.slice(to)];
      const kept = (part: TypedPiece) => (part.text.trim() === '' ? [] : [part]);
      return [
        ...kept({ ...piece, text: before }),
        ...added,
        ...kept({ ...typedPiece(after), isFormatted: piece.isFormatted }),
      ];
    }),
  );
}

/** With a typed piece at the end, so that one can always write on. */
export const endTyped = (pieces: OwnPiece[]): OwnPiece[] =>
  pieces.at(-1)?.kind === 'typed' ? pieces : [...pieces, typedPiece()];
