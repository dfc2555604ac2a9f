import { useLayoutEffect, useRef } from 'preact/hooks';
import type { FirstUp } from '#lib/store/first-up.ts';
import type { BriefStanding } from '../derive/next-up.ts';
import { coverDeck } from '../derive/progress.ts';
import { reasonOf, whySentence } from '../derive/why.ts';
import { deskLink } from '../parts/desk-link.ts';
import { topicName } from '../parts/topic-name.ts';
import { Words } from '../parts/words.tsx';
import { t, tn } from '../text.ts';
import type { Stood } from './use-popup.ts';

interface NextCardProps {
  first: FirstUp;
  stood: Stood | null;
  /** Begins the round; null while there is none to begin. */
  start: (() => void) | null;
  choose(): void;
}

/** The item that gains most now, and the button into a round. */
export function NextCard({ first, stood, start, choose }: NextCardProps) {
  const standing = stood?.standing;
  const shown = first.queue[0]?.item ?? standing?.ranked[0]?.item;
  const topic = [...first.topics, ...(standing?.deck.topics ?? [])].find(({ id }) => id === shown?.topicId);
  if (!shown) return standing ? <NothingToAsk standing={standing} /> : <p class="soft">{t('reading')}</p>;
  return (
    <>
      <section class="next stack" aria-label={t('popupNext')}>
        <p class="soft">
          {t('popupNext')}
          {topic && ` · ${topicName(topic)}`}
        </p>
        <p class="asks">
          <Words text={shown.asks} />
        </p>
        <StartButton minutes={first.settings.roundMinutes} start={start} choose={choose} />
        <details class="soft">
          <summary>{t('whyAsk')}</summary>
          <p>{whyOf(shown.id, first, stood)}</p>
        </details>
      </section>
      {/* Its place is kept, so that nothing below moves from under a finger when the course has been read. */}
      {standing ? <GapsLine standing={standing} /> : <p class="gaps" />}
    </>
  );
}

/** Why an item is shown: by the numbers of the whole course, or those kept with the queue. */
function whyOf(id: string, { queue }: FirstUp, stood: Stood | null): string {
  const now = Date.now();
  const ranked = stood?.standing.ranked.find(({ item }) => item.id === id);
  const reason =
    stood && ranked ? reasonOf(ranked, stood.at) : queue.find(({ item }) => item.id === id)?.reason;
  return reason ? whySentence(reason, now) : '';
}

interface StartButtonProps {
  minutes: number;
  start: (() => void) | null;
  choose(): void;
}

function StartButton({ minutes, start, choose }: StartButtonProps) {
  const button = useRef<HTMLButtonElement>(null);
  const ready = start !== null;
  // The first Enter after the button can be pressed begins the round: the focus must not wait for the next frame.
  useLayoutEffect(() => {
    if (!ready) return;
    const closing = new AbortController();
    const focus = () => {
      if (document.activeElement === document.body) button.current!.focus();
    };
    button.current!.focus();
    // The popup's window may come to the front after that only, and begin with no focus.
    addEventListener('focus', focus, { signal: closing.signal });
    return () => closing.abort();
  }, [ready]);
  return (
    <div class="row">
      <button class="main" ref={button} disabled={!ready} onClick={() => start?.()}>
        {tn('roundStart', minutes)} <kbd>Enter</kbd>
      </button>
      <button type="button" class="plain" onClick={choose}>
        {t('roundChoose')}
      </button>
    </div>
  );
}

function GapsLine({ standing }: { standing: BriefStanding }) {
  const { topics } = coverDeck(standing.deck, standing.progress);
  if (topics.length === 0)
    return (
      <p>
        <a href={deskLink('syllabus')} target="_blank">
          {t('popupNoSyllabus')}
        </a>
      </p>
    );
  const empty = topics.filter(({ evidence }) => evidence.clips === 0).length;
  return (
    <p class="gaps">
      {empty === 0 ? t('popupNoGaps') : tn('popupGaps', empty, topics.length)}{' '}
      <a href={deskLink('coverage')} target="_blank">
        {t('popupSeeGaps')}
      </a>
    </p>
  );
}

function NothingToAsk({ standing }: { standing: BriefStanding }) {
  const [clip] = standing.deck.clips.toSorted((a, b) => b.createdAt - a.createdAt);
  return (
    <>
      <section class="next stack">
        <p>{clip ? t('popupNoQuestions') : t('popupNoClips')}</p>
        {clip && (
          <div>
            <a class="button" href={deskLink(`clip/${clip.id}`)} target="_blank">
              {t('slipWriteQuestion')}
            </a>
          </div>
        )}
      </section>
      <GapsLine standing={standing} />
    </>
  );
}
