import { useLayoutEffect, useRef } from 'preact/hooks';
import type { FirstUp } from '#lib/store/first-up.ts';
import type { Standing } from '../derive/next-up.ts';
import { coverDeck } from '../derive/progress.ts';
import { whySentence } from '../derive/why.ts';
import { deskLink } from '../parts/desk-link.ts';
import { topicName } from '../parts/topic-name.ts';
import { Words } from '../parts/words.tsx';
import { t, tn } from '../text.ts';

interface NextCardProps {
  first: FirstUp;
  standing: Standing | undefined;
  start(): void;
}

/** The item that gains most now, and the button into a round. */
export function NextCard({ first, standing, start }: NextCardProps) {
  const best = standing?.ranked.find(({ item }) => item.id === first.item?.id) ?? standing?.ranked[0];
  const item = first.item ?? best?.item;
  const topic = first.item ? first.topic : standing?.deck.topics.find(({ id }) => id === item?.topicId);
  if (!item) return standing ? <NothingToAsk standing={standing} /> : <p class="soft">{t('reading')}</p>;
  return (
    <>
      <section class="next stack" aria-label={t('popupNext')}>
        <p class="soft">
          {t('popupNext')}
          {topic && ` · ${topicName(topic)}`}
        </p>
        <p class="asks">
          <Words text={item.asks} />
        </p>
        <StartButton minutes={first.settings.roundMinutes} ready={standing !== undefined} start={start} />
        {best && (
          <details class="soft">
            <summary>{t('whyAsk')}</summary>
            <p>{whySentence(best)}</p>
          </details>
        )}
      </section>
      {standing && <GapsLine standing={standing} />}
    </>
  );
}

function StartButton({ minutes, ready, start }: { minutes: number; ready: boolean; start(): void }) {
  const button = useRef<HTMLButtonElement>(null);
  // The first Enter after the button can be pressed begins the round: the focus must not wait for the next frame.
  useLayoutEffect(() => {
    if (ready) button.current!.focus();
  }, [ready]);
  return (
    <div>
      <button class="main" ref={button} disabled={!ready} onClick={start}>
        {tn('roundStart', minutes)} <kbd>Enter</kbd>
      </button>
    </div>
  );
}

function GapsLine({ standing }: { standing: Standing }) {
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

function NothingToAsk({ standing }: { standing: Standing }) {
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
