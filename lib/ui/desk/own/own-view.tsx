import { useEffect, useState } from 'preact/hooks';
import { countParts } from '#lib/capture/own/join-parts.ts';
import type { Clip } from '#lib/model/clip.ts';
import { useDeck } from '../../deck/deck-context.tsx';
import { useAction } from '../../deck/use-action.ts';
import type { Standing } from '../../derive/next-up.ts';
import { FileButton } from '../../parts/file-button.tsx';
import { Trouble } from '../../parts/trouble.tsx';
import { useDrop } from '../../pdf/use-drop.ts';
import { t, tn } from '../../text.ts';
import { linkTo } from '../route.ts';
import { TopicChoice } from '../topic-choice.tsx';
import { htmlOfPieces, keepDraft } from './keep-draft.ts';
import { type OwnDraft, type OwnPiece, isEmptyDraft } from './own-draft.ts';
import { PastedShown, Sheet, Typed } from './pieces.tsx';
import { endTyped } from './take-in.ts';
import { useIntake } from './use-intake.ts';
import { type OwnDraftState, useOwnDraft } from './use-own-draft.ts';

/** The student's own notes: typed, pasted or photographed, and kept as clips beside those from elsewhere. */
export function OwnView({ standing }: { standing: Standing }) {
  const { course } = standing.deck;
  const state = useOwnDraft(course.id);
  const [kept, setKept] = useState<Clip[]>([]);
  return (
    <div class="stack">
      <div class="row apart">
        <h1>{t('ownTitle')}</h1>
        <a href={linkTo('clips')}>{t('pageClips')}</a>
      </div>
      <p class={kept.length > 0 ? 'remark' : 'unseen'} role="status">
        {kept.length > 0 && <Kept clips={kept} />}
      </p>
      {state.draft && <DraftForm standing={standing} state={state} draft={state.draft} setKept={setKept} />}
    </div>
  );
}

function Kept({ clips }: { clips: Clip[] }) {
  return (
    <>
      {tn('ownKept', clips.length)}{' '}
      <a href={linkTo(clips.length === 1 ? `clip/${clips[0]!.id}` : 'clips')}>{t('ownLook')}</a>
    </>
  );
}

interface DraftFormProps {
  standing: Standing;
  state: OwnDraftState;
  draft: OwnDraft;
  setKept(clips: Clip[]): void;
}

function DraftForm({ standing: { deck }, state, draft, setKept }: DraftFormProps) {
  const db = useDeck();
  const action = useAction();
  const { change, clear } = state;
  const set = (part: Partial<OwnDraft>) => {
    setKept([]);
    change((before) => ({ ...before, ...part }));
  };
  const intake = useIntake(change);
  const parts = useParts(draft.pieces);
  const isOver = useDrop(intake.dropped);
  const keep = async () => {
    const isSplit = draft.isSplit && parts > 1;
    setKept(await keepDraft(db, deck.course.id, { ...draft, isSplit }, Date.now()));
    intake.forget();
    clear();
  };
  return (
    <form
      class={isOver ? 'sheet stack narrow drop-over' : 'sheet stack narrow'}
      onSubmit={(event) => {
        event.preventDefault();
        void action.run(keep);
      }}
    >
      <p>{t('ownHow')}</p>
      <div class="field">
        <label for="own-title">{t('ownName')}</label>
        <input
          id="own-title"
          dir="auto"
          maxLength={300}
          value={draft.title}
          aria-describedby="own-title-hint"
          onInput={(event) => set({ title: event.currentTarget.value })}
        />
        <p id="own-title-hint" class="soft">
          {t('ownNameHint')}
        </p>
      </div>
      <Pieces pieces={draft.pieces} set={(pieces) => set({ pieces })} pasted={intake.pasted} />
      <AddSheet add={intake.add} />
      <Trouble text={intake.trouble} />
      {intake.lost > 0 && (
        <p class="remark" role="status">
          {tn('ownLost', intake.lost)}
        </p>
      )}
      <TopicChoice topics={deck.topics} chosen={draft.topicIds} choose={(topicIds) => set({ topicIds })} />
      {parts > 1 && <SplitChoice parts={parts} isSplit={draft.isSplit} set={(isSplit) => set({ isSplit })} />}
      <Trouble text={action.trouble ?? state.trouble} />
      <div class="row">
        <button class="main" disabled={action.busy || isEmptyDraft(draft)}>
          {t('ownKeep')}
        </button>
        <span class="soft">{t('ownDraftHint')}</span>
      </div>
    </form>
  );
}

interface PiecesProps {
  pieces: OwnPiece[];
  set(pieces: OwnPiece[]): void;
  pasted(event: ClipboardEvent, piece: OwnPiece, field: HTMLTextAreaElement): void;
}

function Pieces({ pieces, set, pasted }: PiecesProps) {
  const changeAt = (id: string) => (next: OwnPiece | null) =>
    set(endTyped(pieces.flatMap((piece) => (piece.id === id ? (next ?? []) : piece))));
  const first = pieces.find(({ kind }) => kind === 'typed');
  return (
    <>
      {pieces.map((piece) => {
        const change = changeAt(piece.id);
        if (piece.kind === 'pasted') return <PastedShown key={piece.id} piece={piece} change={change} />;
        if (piece.kind === 'sheet') return <Sheet key={piece.id} piece={piece} change={change} />;
        return (
          <Typed
            key={piece.id}
            piece={piece}
            isFirst={piece === first}
            change={change}
            paste={(event, field) => pasted(event, piece, field)}
          />
        );
      })}
    </>
  );
}

function AddSheet({ add }: { add(files: readonly File[]): void }) {
  return (
    <div class="row">
      <FileButton id="own-sheet" label={t('ownAddSheet')} accept="image/*" multiple open={add} />
      <span class="soft">{t('ownDrop')}</span>
    </div>
  );
}

interface SplitChoiceProps {
  parts: number;
  isSplit: boolean;
  set(isSplit: boolean): void;
}

function SplitChoice({ parts, isSplit, set }: SplitChoiceProps) {
  return (
    <fieldset class="field">
      <legend>{t('ownSplit')}</legend>
      {[false, true].map((value) => (
        <label class="check" key={String(value)}>
          <input type="radio" name="own-split" checked={isSplit === value} onChange={() => set(value)} />
          {value ? t('ownSplitParts', parts) : t('ownSplitWhole')}
        </label>
      ))}
    </fieldset>
  );
}

/** How many clips the headings would make; counted when typing rests. */
function useParts(pieces: OwnPiece[]): number {
  const [parts, setParts] = useState(1);
  useEffect(() => {
    let gone = false;
    const wait = setTimeout(
      () => void htmlOfPieces(pieces).then((html) => !gone && setParts(countParts(html, document))),
      400,
    );
    return () => {
      gone = true;
      clearTimeout(wait);
    };
  }, [pieces]);
  return parts;
}
