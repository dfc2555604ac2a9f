import { useMemo } from 'preact/hooks';
import { nextItems } from '#lib/recall/next-item.ts';
import { QUEUE_LENGTH, type Standing } from '../derive/next-up.ts';
import { deskLink } from '../parts/desk-link.ts';
import { topicNames } from '../parts/topic-name.ts';
import { RoundCard } from '../round/round-card.tsx';
import { RoundEnd } from '../round/round-end.tsx';
import { t } from '../text.ts';
import { useRound } from '../round/use-round.ts';

interface PopupRoundProps {
  standing: Standing;
  /** The item that the popup showed: it comes first. */
  firstId: string | undefined;
  minutes: number;
  again(): void;
}

/** A round in the popup, over everything in the course. */
export function PopupRound({ standing, firstId, minutes, again }: PopupRoundProps) {
  const queue = useMemo(() => {
    const items = nextItems(standing.ranked, QUEUE_LENGTH).map(({ item }) => item);
    const shown = standing.progress.items.get(firstId ?? '');
    return shown ? [shown, ...items.filter((item) => item !== shown)] : items;
  }, [standing, firstId]);
  const running = useRound(standing.deck.course.id, queue, minutes);
  const name = useMemo(() => topicNames(standing.deck.topics), [standing]);
  return (
    <main>
      <h1 class="unseen">{t('pageRound')}</h1>
      {running.round.current ? (
        <RoundCard running={running} topicName={name} />
      ) : (
        <RoundEnd round={running.round} topicName={name} deskLink={deskLink} again={again} />
      )}
    </main>
  );
}
