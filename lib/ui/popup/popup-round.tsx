import type { Round } from '#lib/recall/round.ts';
import { deskLink } from '../parts/desk-link.ts';
import type { RoundPlan } from '../round/round-plan.ts';
import { RoundRunner } from '../round/round-runner.tsx';
import { t } from '../text.ts';

interface PopupRoundProps {
  plan: RoundPlan;
  topicName(id: string): string;
  again(round: Round): void;
  ended(): void;
}

/** A round in the popup. */
export function PopupRound(props: PopupRoundProps) {
  return (
    <main>
      <h1 class="unseen">{t('pageRound')}</h1>
      <RoundRunner deskLink={deskLink} {...props} />
    </main>
  );
}
