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

const keyOf = (courseId: string): string => `ownNotes:${courseId}`;

/**
 * The draft lives in the extension's own storage on the device, one for each course, so that it outlasts a reload and
 * the browser's closing without being a clip already.
 */
export async function readDraft(courseId: string): Promise<OwnDraft | null> {
  const key = keyOf(courseId);
  const { [key]: kept } = await browser.storage.local.get(key);
  return OwnDraft.safeParse(kept).data ?? null;
}

/** Keeps the draft; an empty one leaves nothing behind. */
export async function saveDraft(courseId: string, draft: OwnDraft): Promise<void> {
  const key = keyOf(courseId);
  if (isEmptyDraft(draft)) await browser.storage.local.remove(key);
  else await browser.storage.local.set({ [key]: draft });
}
