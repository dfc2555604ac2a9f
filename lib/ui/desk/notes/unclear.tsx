import { useId, useState } from 'preact/hooks';
import type { Cleared } from '#lib/model/cleared.ts';
import type { Clip } from '#lib/model/clip.ts';
import { type UnclearPlace, clearUnclear, markUnclear } from '#lib/store/actions/unclear.ts';
import { useDeck } from '../../deck/deck-context.tsx';
import { useAction } from '../../deck/use-action.ts';
import { Trouble } from '../../parts/trouble.tsx';
import { t } from '../../text.ts';

interface UnclearProps {
  place: UnclearPlace;
  row: { unclear: boolean; cleared: readonly Cleared[] };
  /** What is marked. */
  label: string;
  /** Clips that may have explained it. */
  clips: readonly Clip[];
}

/** The unclear mark: raised by a tick, and taken away by saying what made it clear. */
export function Unclear({ place, row, label, clips }: UnclearProps) {
  const db = useDeck();
  const action = useAction();
  const [words, setWords] = useState('');
  const [clipId, setClipId] = useState('');
  const id = useId();
  const clear = async () => {
    const by = { words, clipId: clipId === '' ? null : clipId };
    if (!(await action.run(() => clearUnclear(db, place, by, Date.now())))) return;
    setWords('');
    setClipId('');
  };
  return (
    <div class="stack unclear-mark">
      {row.unclear ? (
        <form
          class="remark stack"
          onSubmit={(event) => {
            event.preventDefault();
            void clear();
          }}
        >
          <strong>{label}</strong>
          <div class="field">
            <label for={`${id}words`}>{t('clearedBy')}</label>
            <textarea
              id={`${id}words`}
              rows={2}
              maxLength={2000}
              value={words}
              onInput={(event) => setWords(event.currentTarget.value)}
            />
          </div>
          {clips.length > 0 && (
            <div class="field">
              <label for={`${id}clip`}>{t('clearedByClip')}</label>
              <select
                id={`${id}clip`}
                value={clipId}
                onChange={(event) => setClipId(event.currentTarget.value)}
              >
                <option value="">{t('clearedByNone')}</option>
                {clips.map((clip) => (
                  <option key={clip.id} value={clip.id}>
                    {clip.text.slice(0, 80)}
                  </option>
                ))}
              </select>
            </div>
          )}
          <div>
            <button disabled={action.busy}>{t('clearIt')}</button>
          </div>
        </form>
      ) : (
        <label class="check">
          <input
            type="checkbox"
            checked={false}
            onChange={(event) => {
              event.currentTarget.checked = false;
              void action.run(() => markUnclear(db, place, Date.now()));
            }}
          />
          {label}
        </label>
      )}
      <History cleared={row.cleared} clips={clips} />
      <Trouble text={action.trouble} />
    </div>
  );
}

/** What cleared it before. */
function History({ cleared, clips }: { cleared: readonly Cleared[]; clips: readonly Clip[] }) {
  if (cleared.length === 0) return null;
  return (
    <ul class="plain-list soft">
      {cleared.map(({ at, words, clipId }) => {
        const clip = clips.find(({ id }) => id === clipId);
        const by = [words, clip && `“${clip.text.slice(0, 80)}”`].filter(Boolean).join(' · ');
        const day = new Date(at).toLocaleDateString();
        return (
          <li key={at} class="wrap">
            {by === '' ? t('clearedOn', day) : t('clearedOnBy', day, by)}
          </li>
        );
      })}
    </ul>
  );
}
