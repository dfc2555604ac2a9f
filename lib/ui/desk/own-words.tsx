import { useCallback, useEffect, useId, useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { Clip } from '#lib/model/clip.ts';
import { changeClip } from '#lib/store/actions/clips.ts';
import { useDeck } from '../deck/deck-context.tsx';
import { useAction } from '../deck/use-action.ts';
import { Trouble } from '../parts/trouble.tsx';
import { FormulaCheck } from '../parts/words.tsx';
import { t } from '../text.ts';

const PAUSE = 500;

/** The student's own words beside a clip, saved while they are written. */
export function OwnWords({ clip }: { clip: Clip }) {
  const db = useDeck();
  const id = useId();
  const action = useAction();
  const { run } = action;
  const [words, setWords] = useState(clip.ownWords);
  const [saved, setSaved] = useState(clip.ownWords);
  const latest = useRef(words);
  const unsaved = useRef(false);
  const pause = useRef<ReturnType<typeof setTimeout>>(undefined);
  const save = useCallback(async () => {
    clearTimeout(pause.current);
    if (!unsaved.current) return;
    const ownWords = latest.current;
    if (!(await run(() => changeClip(db, clip.id, { ownWords }, Date.now())))) return;
    unsaved.current = latest.current !== ownWords;
    setSaved(ownWords);
  }, [db, clip.id, run]);
  // Words written elsewhere, on the slip or in another window, come in; those being written here go before them.
  useLayoutEffect(() => {
    if (unsaved.current) return;
    latest.current = clip.ownWords;
    setWords(clip.ownWords);
    setSaved(clip.ownWords);
  }, [clip.ownWords]);
  // What stands in the field when the page is left is saved as well.
  useEffect(() => {
    const closing = new AbortController();
    addEventListener('pagehide', () => void save(), { signal: closing.signal });
    return () => {
      closing.abort();
      void save();
    };
  }, [save]);
  return (
    <section class="sheet field">
      <label for={id}>{t('ownWords')}</label>
      <textarea
        id={id}
        rows={6}
        maxLength={20_000}
        value={words}
        aria-describedby={`${id}hint`}
        onInput={(event) => {
          setWords((latest.current = event.currentTarget.value));
          unsaved.current = true;
          clearTimeout(pause.current);
          pause.current = setTimeout(() => void save(), PAUSE);
        }}
        onBlur={() => void save()}
      />
      <div class="row spread">
        <p id={`${id}hint`} class="soft">
          {t('ownWordsHintDesk')}
        </p>
        <span class="soft" role="status">
          {words === '' && saved === '' ? '' : words === saved ? t('saved') : t('saving')}
        </span>
      </div>
      <FormulaCheck text={words} />
      <Trouble text={action.trouble} />
    </section>
  );
}
