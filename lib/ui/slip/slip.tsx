import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { SlipState } from '#lib/model/message.ts';
import { Trouble } from '../parts/trouble.tsx';
import { tell, t } from '../text.ts';
import { type Decision, withChosen } from './parts/decision.ts';
import { ScopeButtons } from './parts/scope-buttons.tsx';
import { useDecision } from './parts/use-decision.ts';
import { type Widen, useScope } from './parts/use-scope.ts';
import type { Scope, Widened } from './parts/widener.ts';
import { Topics } from './topics.tsx';

export type { Decision } from './parts/decision.ts';

export interface SlipProps {
  state: SlipState;
  /** The passage as it will be kept, as nodes that are clean already. */
  passage: DocumentFragment;
  /** Fills the places of pictures in the passage, once it is in the page. */
  showPictures?: ((passage: HTMLElement) => void) | undefined;
  /** Puts more fields under the passage. */
  more?: ((into: HTMLElement) => void) | undefined;
  /** How more than this passage can be kept; null where it cannot. */
  widen?: Widen | null;
  /** Keeps the passage, or the wider one; changes the clip where that was kept before. */
  keep(decision: Decision, widened: Widened | null, kept: SlipState['kept']): Promise<{ clipId: string }>;
  /** Opens the desk and leaves. */
  openDesk(path: string): void;
  leave(): void;
}

/** The small sheet beside a selection in which a clip is finished. */
export function Slip(props: SlipProps) {
  const [keptId, setKeptId] = useState<string | null>(null);
  return keptId === null ? (
    <Finish {...props} onKept={setKeptId} />
  ) : (
    <Kept openDesk={props.openDesk} leave={props.leave} clipId={keptId} />
  );
}

interface FinishProps extends SlipProps {
  onKept(clipId: string): void;
}

function Finish({ state: first, passage, showPictures, more, widen, keep, leave, onKept }: FinishProps) {
  const { state, widened, ...scope } = useScope(first, widen);
  const { decision, change } = useDecision(state);
  const [trouble, setTrouble] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  const words = useRef<HTMLTextAreaElement>(null);
  useLayoutEffect(() => words.current!.focus(), []);

  const attempt = async (work: () => Promise<void>) => {
    if (busy) return;
    setBusy(true);
    setTrouble(null);
    await work().catch((error) => setTrouble(tell(error)));
    setBusy(false);
  };
  const problem = widened?.problem;
  const submit = () => {
    if (problem) return;
    void attempt(async () => onKept((await keep(decision, widened, state.kept)).clipId));
  };
  const goTo = (to: Scope | null) =>
    void attempt(async () => {
      setTrouble(await scope.goTo(to));
      if (!to) words.current!.focus();
    });
  return (
    // No form: a form could be submitted by an event that a script made.
    <div
      class="stack"
      onKeyDown={(event) => {
        const target = event.target as HTMLElement;
        const keeps = target.localName === 'textarea' || target.matches('[type=checkbox], .time');
        if (event.key !== 'Enter' || event.shiftKey || event.isComposing || !keeps) return;
        event.preventDefault();
        submit();
      }}
    >
      <Head state={state} leave={leave} />
      <div class="field">
        {!widened && <Preview passage={passage} showPictures={showPictures} />}
        <div ref={scope.box} />
        {widen && <ScopeButtons scope={widened?.scope ?? null} goTo={goTo} />}
      </div>
      {more && <More fill={more} />}
      <Topics
        state={withChosen(state, decision.topicIds)}
        chosen={decision.topicIds}
        choose={(topicIds) => change({ topicIds })}
      />
      <div class="field">
        <label for="own-words">{t('ownWords')}</label>
        <textarea
          id="own-words"
          ref={words}
          rows={3}
          maxLength={20_000}
          value={decision.ownWords}
          aria-describedby="own-words-hint"
          onInput={(event) => change({ ownWords: event.currentTarget.value })}
        />
        <p id="own-words-hint" class="soft">
          {t('ownWordsHint')}
        </p>
      </div>
      <Trouble text={problem ?? trouble} />
      <div class="row foot">
        <button type="button" class="main" disabled={busy || !!problem} onClick={submit}>
          {state.kept ? t('slipSaveChanges') : t('slipKeep')} <kbd>Enter</kbd>
        </button>
        <label class="check">
          <input
            type="checkbox"
            checked={decision.unclear}
            onChange={(event) => change({ unclear: event.currentTarget.checked })}
          />
          {t('unclearMark')}
        </label>
      </div>
    </div>
  );
}

function Head({ state, leave }: Pick<SlipProps, 'state' | 'leave'>) {
  return (
    <>
      <div class="row head">
        <h2>{state.kept ? t('slipKeptBefore') : t('slipTitle', state.courseName)}</h2>
        <button type="button" class="plain" onClick={leave}>
          {t('slipLeave')} <kbd>Esc</kbd>
        </button>
      </div>
      {state.kept && <p class="soft">{t('slipKeptBeforeHint')}</p>}
    </>
  );
}

/** A place for fields that another script fills, once. */
function More({ fill }: { fill(into: HTMLElement): void }) {
  const place = useRef<HTMLDivElement>(null);
  // eslint-disable-next-line react-hooks/exhaustive-deps -- what was filled in stays for as long as the slip does
  useLayoutEffect(() => fill(place.current!), []);
  return <div class="stack" ref={place} />;
}

function Preview({ passage, showPictures }: Pick<SlipProps, 'passage' | 'showPictures'>) {
  const box = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    box.current!.replaceChildren(passage.cloneNode(true));
    showPictures?.(box.current!);
    // eslint-disable-next-line react-hooks/exhaustive-deps -- a new passage brings its own pictures
  }, [passage]);
  return <div class="passage preview" ref={box} tabIndex={0} role="region" aria-label={t('slipPassage')} />;
}

function Kept({ clipId, openDesk, leave }: Pick<SlipProps, 'openDesk' | 'leave'> & { clipId: string }) {
  const next = useRef<HTMLButtonElement>(null);
  useLayoutEffect(() => next.current!.focus(), []);
  return (
    <div class="stack">
      <div role="status">
        <h2>{t('slipKept')}</h2>
      </div>
      <p>{t('slipKeptNext')}</p>
      <div class="row">
        <button
          class="main"
          ref={next}
          onClick={() => openDesk(`clip/${clipId}`)}
          // The key that kept it may still be down.
          onKeyDown={(event) => event.repeat && event.preventDefault()}
        >
          {t('slipWriteQuestion')}
        </button>
        <button onClick={leave}>
          {t('slipDone')} <kbd>Esc</kbd>
        </button>
      </div>
    </div>
  );
}
