import { useEffect, useMemo } from 'preact/hooks';
import type { Round } from '#lib/recall/round.ts';
import { whySentence } from '../derive/why.ts';
import { RoundCard } from './round-card.tsx';
import { RoundEnd } from './round-end.tsx';
import type { RoundPlan } from './round-plan.ts';
import { useRound } from './use-round.ts';

interface RoundRunnerProps {
  plan: RoundPlan;
  topicName(id: string): string;
  /** The address of a page of the desk. */
  deskLink(path: string): string;
  again(round: Round): void;
  /** Called once when the round has ended. */
  ended?(): void;
}

/** A round from its first item to its end. */
export function RoundRunner({ plan, topicName, deskLink, again, ended }: RoundRunnerProps) {
  const running = useRound(plan);
  const { round } = running;
  const reasons = useMemo(
    () => new Map(plan.queue.map(({ item, reason }) => [item.id, whySentence(reason, Date.now())])),
    [plan],
  );
  const isEnded = round.ended !== null;
  useEffect(() => {
    if (isEnded) ended?.();
    // eslint-disable-next-line react-hooks/exhaustive-deps -- once, when it ends
  }, [isEnded]);
  if (isEnded)
    return <RoundEnd round={round} topicName={topicName} deskLink={deskLink} again={() => again(round)} />;
  return (
    <RoundCard
      running={running}
      topicName={topicName}
      why={(id) => reasons.get(id)!}
      isTurned={(id) => plan.turned.has(id)}
    />
  );
}
