import { isReturn } from '#lib/recall/round.ts';
import { Trouble } from '../parts/trouble.tsx';
import { Words } from '../parts/words.tsx';
import { t } from '../text.ts';
import { Asked } from './asked.tsx';
import type { RunningRound } from './use-round.ts';

/** Minutes and seconds, as 1:05. */
export const clockFace = (seconds: number): string =>
  `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;

interface RoundCardProps {
  running: RunningRound;
  topicName(id: string): string;
  /** Why an item is asked, in a sentence. */
  why(id: string): string;
  /** Whether an item is asked from the answer's side. */
  isTurned(id: string): boolean;
}

/** The item in hand: asked, answered in mind or typed, uncovered, marked. */
export function RoundCard({ running, topicName, why, isTurned }: RoundCardProps) {
  const { round, left, trouble, notice, stop } = running;
  const item = round.current!;
  const again = isReturn(round);
  // A new key for each showing: what was typed belongs to the item before.
  const key = `${item.id} ${round.marked.length}`;
  return (
    <section class="stack round" aria-label={t('round')}>
      <header class="row round-head">
        <span class="clock" role="timer" aria-label={t('clockLeft', clockFace(left))}>
          {clockFace(left)}
        </span>
        <progress class="clock-line" max={round.minutes * 60} value={left} aria-hidden="true" />
        <button type="button" class="plain" onClick={stop}>
          {t('roundStop')}
        </button>
      </header>
      {notice && (
        <p class="remark" role="status">
          {notice === 'gone' ? t('roundItemGone') : t('roundItemChanged')}
        </p>
      )}
      <div class="stack" key={key}>
        <p class="soft">
          {topicName(item.topicId)}
          {again && ` · ${t('roundAgain')}`}
        </p>
        <p class="asks" aria-live="polite">
          <Words text={item.asks} />{' '}
          {item.marks > 1 && <span class="soft">{t('marksThere', item.marks)}</span>}
        </p>
        {isTurned(item.id) && <p class="soft">{t('roundTurned')}</p>}
        <Asked item={item} running={running} />
        <details class="soft">
          <summary>{t('whyAsk')}</summary>
          <p>
            {again && `${t('whyReturn')} `}
            {why(item.id)}
          </p>
        </details>
      </div>
      {left === 0 && <p class="soft">{t('roundTimeUp')}</p>}
      <Trouble text={trouble} />
    </section>
  );
}
