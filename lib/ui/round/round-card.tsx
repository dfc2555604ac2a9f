import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { Item } from '#lib/model/item.ts';
import { isReturn } from '#lib/recall/round.ts';
import { Trouble } from '../parts/trouble.tsx';
import { Words } from '../parts/words.tsx';
import { t } from '../text.ts';
import { MarksButtons } from './marks-buttons.tsx';
import type { RunningRound } from './use-round.ts';

/** Minutes and seconds, as 1:05. */
export const clockFace = (seconds: number): string =>
  `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;

interface RoundCardProps {
  running: RunningRound;
  topicName(id: string): string;
}

/** The item in hand: asked, answered in mind or typed, uncovered, marked. */
export function RoundCard({ running, topicName }: RoundCardProps) {
  const { round, left, trouble, stop } = running;
  const item = round.current!;
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
      {/* A new key for each showing: what was typed belongs to the item before. */}
      <Asked
        key={`${item.id} ${round.marked.length}`}
        item={item}
        running={running}
        topic={topicName(item.topicId)}
      />
      {left === 0 && <p class="soft">{t('roundTimeUp')}</p>}
      <Trouble text={trouble} />
    </section>
  );
}

function Asked({ item, running, topic }: { item: Item; running: RunningRound; topic: string }) {
  const [typed, setTyped] = useState('');
  const field = useRef<HTMLTextAreaElement>(null);
  useLayoutEffect(() => field.current!.focus(), []);
  const covered = running.round.uncoveredAt === null;
  return (
    <div class="stack">
      <p class="soft">
        {topic}
        {isReturn(running.round) && ` · ${t('roundAgain')}`}
      </p>
      <p class="asks" aria-live="polite">
        <Words text={item.asks} /> {item.marks > 1 && <span class="soft">{t('marksThere', item.marks)}</span>}
      </p>
      {covered ? (
        <form
          class="stack"
          onSubmit={(event) => {
            event.preventDefault();
            running.uncover();
          }}
        >
          <div class="field">
            <label for="typed" class="soft">
              {t('roundTyped')}
            </label>
            <textarea
              id="typed"
              ref={field}
              rows={2}
              maxLength={20_000}
              value={typed}
              onInput={(event) => setTyped(event.currentTarget.value)}
              onKeyDown={(event) => {
                if (event.key !== 'Enter' || event.shiftKey || event.isComposing) return;
                event.preventDefault();
                running.uncover();
              }}
            />
          </div>
          <div>
            <button class="main">
              {t('roundUncover')} <kbd>Enter</kbd>
            </button>
          </div>
        </form>
      ) : (
        <>
          {typed.trim() !== '' && (
            <div class="answer typed">
              <h2 class="soft">{t('roundYours')}</h2>
              <p>
                <Words text={typed} />
              </p>
            </div>
          )}
          <div class="answer">
            <h2 class="soft">{t('roundAnswer')}</h2>
            <p>
              <Words text={item.covers} />
            </p>
          </div>
          <MarksButtons outOf={item.marks} give={(marks) => running.give(marks, typed)} />
        </>
      )}
    </div>
  );
}
