import { joinParts, type Piece } from '#lib/capture/own/join-parts.ts';
import { ownPassage, typedHtml } from '#lib/capture/own/own-passage.ts';
import { figureOf } from '#lib/capture/pictures/figure.ts';
import type { Clip } from '#lib/model/clip.ts';
import type { Picture, PictureDraft } from '#lib/model/picture.ts';
import { StudentError } from '#lib/model/student-error.ts';
import { keepOwnNotes } from '#lib/store/actions/own-notes.ts';
import type { Db } from '#lib/store/schema.ts';
import { blobOfDataUrl } from '../../parts/data-url.ts';
import type { OwnDraft, OwnPiece } from './own-draft.ts';
import { readAll } from './take-in.ts';

/**
 * Keeps a draft as clips of a source of its own; gives them.
 * Errors: StudentError `errorOwnEmpty`, `errorOwnCaption`, those of joinParts and ownPassage, and those of the store.
 *
 * @param at epoch milliseconds
 */
export async function keepDraft(db: Db, courseId: string, draft: OwnDraft, at: number): Promise<Clip[]> {
  const pieces = await Promise.all(draft.pieces.map(pieceOf));
  const parts = joinParts(pieces, draft.isSplit, document).filter(({ html }) => html !== '');
  if (parts.length === 0) throw new StudentError('errorOwnEmpty');
  const drafts = parts.map(({ heading, html, pictures }) => ({
    courseId,
    topicIds: draft.topicIds,
    ...ownPassage(html, document),
    ownWords: '',
    unclear: false,
    headings: heading === '' ? [] : [heading],
    selectors: [],
    pictures: pictures.map(rowOf),
  }));
  const page = {
    kind: 'own' as const,
    url: `urn:uuid:${crypto.randomUUID()}`,
    title: draft.title.trim(),
    site: '',
    author: '',
    published: '',
    licence: '',
  };
  return keepOwnNotes(db, drafts, page, at);
}

/** How the pieces of a draft read, without their pictures: to see where headings would cut them. */
export const htmlOfPieces = async (pieces: readonly OwnPiece[]): Promise<string[]> =>
  Promise.all(
    pieces.map(async (piece) => {
      if (piece.kind === 'pasted') return piece.html;
      if (piece.kind === 'sheet') return '<p>.</p>';
      return piece.isFormatted ? (await formatted(piece.text)).html : typedHtml(piece.text, document);
    }),
  );

/** Markdown as a passage. Its reader is loaded when it is needed. */
export async function formatted(text: string) {
  const { passageOfMarkdown } = await import('#lib/exchange/markdown/to-passage.ts');
  return passageOfMarkdown(text, document);
}

async function pieceOf(piece: OwnPiece): Promise<Piece<PictureDraft>> {
  switch (piece.kind) {
    case 'pasted':
      return piece;
    case 'sheet': {
      const alt = piece.caption.trim();
      if (alt === '') throw new StudentError('errorOwnCaption');
      const picture = { ...piece.picture, alt };
      // The words stand below it: beside it they would be said twice.
      return { html: figureOf(document, alt, [{ ...picture, alt: '' }]), pictures: [picture] };
    }
    case 'typed': {
      if (!piece.isFormatted) return { html: typedHtml(piece.text, document), pictures: [] };
      const { html, pictures } = await formatted(piece.text);
      return { html, pictures: await readAll(pictures) };
    }
  }
}

function rowOf({ dataUrl, alt, width, height }: PictureDraft) {
  const bytes = blobOfDataUrl(dataUrl)!;
  return { bytes, type: bytes.type as Picture['type'], alt, width, height };
}
