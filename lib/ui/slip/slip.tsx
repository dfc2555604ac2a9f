import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { SlipState } from '#lib/model/message.ts';
import { tell, t } from '../text.ts';
import { Topics } from './topics.tsx';

/** What the student decided on the slip. */
export interface Decision {
  topicIds: string[];
  ownWords: string;
  unclear: boolean;
}

export interface SlipProps {
  state: SlipState;
  /** The passage as it will be kept, as nodes that are clean already. */
  passage: DocumentFragment;
  keep(decision: Decision): Promise<{ clipId: string }>;
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

function firstDecision({ kept, aimedTopicId, suggestions, offSyllabus }: SlipState): Decision {
  if (kept) return { topicIds: kept.topicIds, ownWords: kept.ownWords, unclear: kept.unclear };
  const likely = aimedTopicId ?? (offSyllabus ? undefined : suggestions[0]?.topicId);
  return { topicIds: likely === undefined ? [] : [likely], ownWords: '', unclear: false };
}

function Finish({ state, passage, keep, leave, onKept }: SlipProps & { onKept(clipId: string): void }) {
  const [decision, setDecision] = useState(() => firstDecision(state));
  const [trouble, setTrouble] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  const words = useRef<HTMLTextAreaElement>(null);
  const change = (part: Partial<Decision>) => setDecision((before) => ({ ...before, ...part }));
  useLayoutEffect(() => words.current!.focus(), []);

  const submit = async () => {
    if (busy) return;
    setBusy(true);
    setTrouble(null);
    try {
      onKept((await keep(decision)).clipId);
    } catch (error) {
      setTrouble(tell(error));
      setBusy(false);
    }
  };
  return (
    // No form: a form could be submitted by an event that a script made.
    <div
      class="stack"
      onKeyDown={(event) => {
        const target = event.target as HTMLElement;
        const keeps = target.localName === 'textarea' || target.matches('[type=checkbox]');
        if (event.key !== 'Enter' || event.shiftKey || event.isComposing || !keeps) return;
        event.preventDefault();
        void submit();
      }}
    >
      <div class="row head">
        <h2>{state.kept ? t('slipKeptBefore') : t('slipTitle', state.courseName)}</h2>
        <button type="button" class="plain" onClick={leave}>
          {t('slipLeave')} <kbd>Esc</kbd>
        </button>
      </div>
      {state.kept && <p class="soft">{t('slipKeptBeforeHint')}</p>}
      <Preview passage={passage} />
      <Topics state={state} chosen={decision.topicIds} choose={(topicIds) => change({ topicIds })} />
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
      {trouble !== null && (
        <p class="trouble" role="alert">
          {trouble}
        </p>
      )}
      <div class="row foot">
        <button type="button" class="main" disabled={busy} onClick={() => void submit()}>
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

function Preview({ passage }: { passage: DocumentFragment }) {
  const box = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => box.current!.replaceChildren(passage.cloneNode(true)), [passage]);
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
          onClick={() => {
            openDesk(`clip/${clipId}`);
            leave();
          }}
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
