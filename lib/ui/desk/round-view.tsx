import { useMemo, useState } from 'preact/hooks';
import type { Item } from '#lib/model/item.ts';
import { nextItems } from '#lib/recall/next-item.ts';
import { readSettings } from '#lib/store/actions/courses.ts';
import { useDeck } from '../deck/deck-context.tsx';
import { QUEUE_LENGTH, type Standing } from '../derive/next-up.ts';
import { whySentence } from '../derive/why.ts';
import { topicNames } from '../parts/topic-name.ts';
import { Words } from '../parts/words.tsx';
import { RoundCard } from '../round/round-card.tsx';
import { RoundEnd } from '../round/round-end.tsx';
import { useRound } from '../round/use-round.ts';
import { t, tn } from '../text.ts';
import { useLive } from '../use-live.ts';
import { linkTo } from './route.ts';

/** A round at the desk: over the course, or over one topic with those below it. */
export function RoundView({ standing, topicId }: { standing: Standing; topicId: string | null }) {
  const db = useDeck();
  const settings = useLive(() => readSettings(db), ['settings'], 'settings');
  // A round keeps the queue it began with: its own attempts change the standing while it runs.
  const [round, setRound] = useState<{ count: number; queue: Item[] } | null>(null);
  const names = useMemo(() => topicNames(standing.deck.topics), [standing]);
  const ranked = topicId === null ? standing.ranked : within(standing, topicId);
  if (settings.state !== 'ready') return null;
  const minutes = settings.value.roundMinutes;
  const start = () => {
    const queue = nextItems(ranked, QUEUE_LENGTH).map(({ item }) => item);
    setRound({ count: (round?.count ?? 0) + 1, queue });
  };
  if (round)
    return (
      <Running
        key={round.count}
        queue={round.queue}
        minutes={minutes}
        courseId={standing.deck.course.id}
        names={names}
        again={start}
      />
    );
  const best = ranked[0];
  return (
    <div class="stack">
      <h1>{topicId === null ? t('pageRound') : t('roundOnTopic', names(topicId))}</h1>
      {best ? (
        <div class="sheet stack narrow">
          <p class="soft">
            {t('popupNext')} · {names(best.item.topicId)}
          </p>
          <p class="asks">
            <Words text={best.item.asks} />
          </p>
          <p class="soft">{whySentence(best)}</p>
          <div>
            <button class="main" onClick={start}>
              {tn('roundStart', minutes)}
            </button>
          </div>
          <p class="soft">{tn('roundItems', ranked.length)}</p>
        </div>
      ) : (
        <div class="sheet stack narrow">
          <p>{t('popupNoQuestions')}</p>
          <div>
            <a class="button" href={linkTo(topicId === null ? 'clips' : `topic/${topicId}`)}>
              {topicId === null ? t('pageClips') : t('toTopic')}
            </a>
          </div>
        </div>
      )}
    </div>
  );
}

/** The ranked items that stand under a topic or below it. */
function within(standing: Standing, topicId: string) {
  const wanted = new Set([topicId]);
  // Topics come in reading order: a parent stands before its children.
  for (const topic of standing.deck.topics) if (wanted.has(topic.parentId ?? '')) wanted.add(topic.id);
  return standing.ranked.filter(({ item }) => wanted.has(item.topicId));
}

interface RunningProps {
  queue: Item[];
  minutes: number;
  courseId: string;
  names(id: string): string;
  again(): void;
}

function Running({ queue, minutes, courseId, names, again }: RunningProps) {
  const running = useRound(courseId, queue, minutes);
  return (
    <div class="sheet narrow">
      <h1 class="unseen">{t('pageRound')}</h1>
      {running.round.current ? (
        <RoundCard running={running} topicName={names} />
      ) : (
        <RoundEnd round={running.round} topicName={names} deskLink={linkTo} again={again} />
      )}
    </div>
  );
}
