import { useMemo, useState } from 'preact/hooks';
import { readSettings } from '#lib/store/actions/courses.ts';
import { useDeck } from '../deck/deck-context.tsx';
import type { Standing } from '../derive/next-up.ts';
import { reasonOf, whySentence } from '../derive/why.ts';
import { topicNames } from '../parts/topic-name.ts';
import { Words } from '../parts/words.tsx';
import { type RoundChoice, type Scope, itemsOf, planOf } from '../round/choice.ts';
import { RoundChoices } from '../round/round-choices.tsx';
import type { RoundPlan } from '../round/round-plan.ts';
import { RoundRunner } from '../round/round-runner.tsx';
import { t } from '../text.ts';
import { useLive } from '../use-live.ts';
import { Practice } from './practice.tsx';
import { linkTo } from './route.ts';

/** The round that runs, by which choice, and the how many-th it is. */
interface Run {
  plan: RoundPlan;
  choice: RoundChoice;
  count: number;
}

/** A round at the desk: over the course, or over one topic with those below it, or as chosen. */
export function RoundView({ standing, topicId }: { standing: Standing; topicId: string | null }) {
  const db = useDeck();
  const settings = useLive(() => readSettings(db), ['settings'], 'settings');
  const [run, setRun] = useState<Run | null>(null);
  const names = useMemo(() => topicNames(standing.deck.topics), [standing]);
  const scope: Scope = topicId === null ? { of: 'all' } : { of: 'topic', topicId };
  if (settings.state !== 'ready') return null;
  const start = (choice: RoundChoice) =>
    setRun({ plan: planOf(standing, choice, Date.now()), choice, count: (run?.count ?? 0) + 1 });
  if (run)
    return (
      <div class="sheet narrow">
        <h1 class="unseen">{t('pageRound')}</h1>
        <RoundRunner
          key={run.count}
          plan={run.plan}
          topicName={names}
          deskLink={linkTo}
          again={() => start(run.choice)}
        />
      </div>
    );
  const ranked = itemsOf(standing, scope);
  const [best] = ranked;
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
          <p class="soft">{whySentence(reasonOf(best, Date.now()), Date.now())}</p>
          <RoundChoices
            standing={standing}
            first={{ scope, order: 'gain', minutes: settings.value.roundMinutes, turned: false }}
            start={start}
          />
        </div>
      ) : (
        <NothingHere topicId={topicId} />
      )}
      {best && <Practice standing={standing} ranked={ranked} topicName={names} />}
    </div>
  );
}

/** Leads to where something to recall is written. */
function NothingHere({ topicId }: { topicId: string | null }) {
  return (
    <div class="sheet stack narrow">
      <p>{t('popupNoQuestions')}</p>
      <div>
        <a class="button" href={linkTo(topicId === null ? 'clips' : `topic/${topicId}`)}>
          {topicId === null ? t('pageClips') : t('toTopic')}
        </a>
      </div>
    </div>
  );
}
