import { browser } from 'wxt/browser';
import { z } from 'zod';
import { PictureDraft } from '#lib/model/picture.ts';

/** Something typed, pasted, or photographed: the notes are made of these, in their order. */
const OwnPiece = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('typed'), id: z.string(), text: z.string(), isFormatted: z.boolean() }),
  /** Its pictures by number; null for one that could not be read. */
  z.object({
    kind: z.literal('pasted'),
    id: z.string(),
    html: z.string(),
    pictures: z.array(PictureDraft.nullable()),
  }),
  z.object({ kind: z.literal('sheet'), id: z.string(), picture: PictureDraft, caption: z.string() }),
]);
export type OwnPiece = z.infer<typeof OwnPiece>;
export type TypedPiece = Extract<OwnPiece, { kind: 'typed' }>;
export type PastedPiece = Extract<OwnPiece, { kind: 'pasted' }>;
export type SheetPiece = Extract<OwnPiece, { kind: 'sheet' }>;

/** Own notes that are not kept yet. */
export const OwnDraft = z.object({
  title: z.string(),
  topicIds: z.array(z.string()),
  isSplit: z.boolean(),
  pieces: z.array(OwnPiece),
});
export type OwnDraft = z.infer<typeof OwnDraft>;

export const typedPiece = (text = ''): TypedPiece => ({
  kind: 'typed',
  id: crypto.randomUUID(),
  text,
  isFormatted: false,
});

export const emptyDraft = (topicIds: string[] = []): OwnDraft => ({
  title: '',
  topicIds,
  isSplit: false,
  pieces: [typedPiece()],
});

/** Whether nothing would be lost with it. */
export const isEmptyDraft = ({ title, pieces }: OwnDraft): boolean =>
  title.trim() === '' && pieces.every((piece) => piece.kind === 'typed' && piece.text.trim() === '');

const wordsKey = (courseId: string): string => `ownNotes:${courseId}`;
const pictureKey = (pieceId: string): string => `ownPictures:${pieceId}`;

/** A piece's pictures; nothing where it has none. */
const picturesOf = (piece: OwnPiece): (PictureDraft | null)[] =>
  piece.kind === 'sheet' ? [piece.picture] : piece.kind === 'pasted' ? piece.pictures : [];

const withoutPictures = (piece: OwnPiece): object =>
  piece.kind === 'sheet'
    ? { ...piece, picture: undefined }
    : piece.kind === 'pasted'
      ? { ...piece, pictures: undefined }
      : piece;

const Stored = OwnDraft.extend({ pieces: z.array(z.looseObject({ kind: z.string(), id: z.string() })) });

/**
 * The draft lives on the device, one for each course, so that it outlasts a reload and the browser's closing without
 * being a clip already: what is typed in the page's own storage, since only that is written at once when the page is
 * left; pictures, which would not fit there, in the extension's.
 */
export async function readDraft(courseId: string): Promise<OwnDraft | null> {
  const stored = Stored.safeParse(parsed(localStorage.getItem(wordsKey(courseId)))).data;
  if (!stored) return null;
  const kept = await browser.storage.local.get(stored.pieces.map(({ id }) => pictureKey(id)));
  const pieces = stored.pieces.flatMap((piece) => {
    const pictures = (kept[pictureKey(piece.id)] as unknown[] | undefined) ?? [];
    const whole = { ...piece, picture: pictures[0], pictures };
    return OwnPiece.safeParse(whole).data ?? [];
  });
  return { ...stored, pieces: pieces.at(-1)?.kind === 'typed' ? pieces : [...pieces, typedPiece()] };
}

function parsed(json: string | null): unknown {
  try {
    return JSON.parse(json ?? 'null');
  } catch {
    return null;
  }
}

/** Keeps the words of a draft, at once; an empty one leaves nothing behind. Throws where there is no room. */
export function saveWords(courseId: string, draft: OwnDraft): void {
  if (isEmptyDraft(draft)) localStorage.removeItem(wordsKey(courseId));
  else {
    const words = { ...draft, pieces: draft.pieces.map(withoutPictures) };
    localStorage.setItem(wordsKey(courseId), JSON.stringify(words));
  }
}

/** Keeps the pictures of pieces that came in, and drops those of pieces that went. */
export async function savePictures(before: readonly OwnPiece[], after: readonly OwnPiece[]): Promise<void> {
  const ids = (pieces: readonly OwnPiece[]) =>
    new Set(pieces.filter((piece) => picturesOf(piece).length > 0).map(({ id }) => id));
  const [old, now] = [ids(before), ids(after)];
  const came = after.filter(({ id }) => now.has(id) && !old.has(id));
  const went = [...old].filter((id) => !now.has(id));
  if (came.length > 0)
    await browser.storage.local.set(
      Object.fromEntries(came.map((piece) => [pictureKey(piece.id), picturesOf(piece)])),
    );
  if (went.length > 0) await browser.storage.local.remove(went.map(pictureKey));
}
