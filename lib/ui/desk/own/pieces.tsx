import { useEffect, useId, useState } from 'preact/hooks';
import type { Pasted } from '#lib/capture/own/own-passage.ts';
import { plainText } from '#lib/capture/plain-text.ts';
import { cleanPassage } from '#lib/capture/sanitise.ts';
import { looksLikeMarkdown } from '#lib/exchange/markdown/looks-like-markdown.ts';
import { FormulaCheck } from '../../parts/words.tsx';
import { t } from '../../text.ts';
import { DraftPassage } from './draft-passage.tsx';
import { formatted } from './keep-draft.ts';
import type { OwnPiece, PastedPiece, SheetPiece, TypedPiece } from './own-draft.ts';

/** How a piece is changed, or taken out by null. */
type Change<P> = (piece: P | OwnPiece | null) => void;

interface TypedProps {
  piece: TypedPiece;
  isFirst: boolean;
  change: Change<TypedPiece>;
  paste(event: ClipboardEvent, field: HTMLTextAreaElement): void;
}

/** A field to type or paste into, and how what is in it comes out. */
export function Typed({ piece, isFirst, change, paste }: TypedProps) {
  const id = useId();
  const { text, isFormatted } = piece;
  const isOffered = isFormatted || looksLikeMarkdown(text);
  return (
    <div class="field">
      <label for={id}>{isFirst ? t('ownText') : t('ownMore')}</label>
      <textarea
        id={id}
        dir="auto"
        rows={isFirst ? 10 : 4}
        value={text}
        onInput={(event) => change({ ...piece, text: event.currentTarget.value })}
        onPaste={(event) => paste(event, event.currentTarget)}
      />
      {isOffered && (
        <label class="check">
          <input
            type="checkbox"
            checked={isFormatted}
            onChange={(event) => change({ ...piece, isFormatted: event.currentTarget.checked })}
          />
          {t('ownFormat')}
        </label>
      )}
      {isFormatted ? <Formatted text={text} /> : null}
      <FormulaCheck text={text} />
    </div>
  );
}

/** How long typing rests before it is formatted, in milliseconds. */
const PAUSE = 300;

function Formatted({ text }: { text: string }) {
  const [passage, setPassage] = useState<Pasted | null>(null);
  useEffect(() => {
    let gone = false;
    const wait = setTimeout(() => void formatted(text).then((made) => !gone && setPassage(made)), PAUSE);
    return () => {
      gone = true;
      clearTimeout(wait);
    };
  }, [text]);
  return passage && <DraftPassage {...passage} label={t('ownFormatted')} />;
}

/** Rich text as it was pasted. */
export function PastedShown({ piece, change }: { piece: PastedPiece; change: Change<PastedPiece> }) {
  const asText = () => {
    const text = plainText(cleanPassage(piece.html, document));
    change({ kind: 'typed', id: piece.id, text, isFormatted: false });
  };
  return (
    <div class="stack own-piece" role="group" aria-label={t('ownPasted')}>
      <DraftPassage html={piece.html} pictures={piece.pictures} label={t('ownPasted')} />
      <div class="row">
        <button type="button" onClick={asText}>
          {t('ownAsText')}
        </button>
        <button type="button" onClick={() => change(null)}>
          {t('ownRemove')}
        </button>
      </div>
    </div>
  );
}

/** A photographed sheet with the student's words for it. */
export function Sheet({ piece, change }: { piece: SheetPiece; change: Change<SheetPiece> }) {
  const id = useId();
  const { dataUrl, width, height } = piece.picture;
  return (
    <div class="stack own-piece" role="group" aria-label={t('ownSheet')}>
      <img src={dataUrl} width={width} height={height} alt={piece.caption || t('ownSheet')} />
      <div class="field">
        <label for={id}>{t('ownCaption')}</label>
        <input
          id={id}
          dir="auto"
          maxLength={500}
          value={piece.caption}
          aria-describedby={`${id}-hint`}
          onInput={(event) => change({ ...piece, caption: event.currentTarget.value })}
        />
        <p id={`${id}-hint`} class="soft">
          {t('ownCaptionHint')}
        </p>
      </div>
      <div class="row">
        <button type="button" onClick={() => change(null)}>
          {t('ownRemove')}
        </button>
      </div>
    </div>
  );
}
