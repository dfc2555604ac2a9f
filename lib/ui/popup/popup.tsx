import { useMemo, useState } from 'preact/hooks';
import type { Course } from '#lib/model/course.ts';
import type { Round } from '#lib/recall/round.ts';
import { deskLink } from '../parts/desk-link.ts';
import { topicNames } from '../parts/topic-name.ts';
import { Trouble } from '../parts/trouble.tsx';
import { type RoundChoice, planOf } from '../round/choice.ts';
import { RoundChoices } from '../round/round-choices.tsx';
import type { RoundPlan } from '../round/round-plan.ts';
import { t } from '../text.ts';
import { KeepButton } from './keep-button.tsx';
import { NextCard } from './next-card.tsx';
import { PdfButton } from './pdf-button.tsx';
import { PopupRound } from './popup-round.tsx';
import { PopupSearch } from './popup-search.tsx';
import { type Stood, defaultPlan, usePopup } from './use-popup.ts';

/** The round that runs, and the choice that it came from; null for what gains most now. */
interface Run {
  plan: RoundPlan;
  choice: RoundChoice | null;
  /** Rounds of this popup before it. */
  before: number;
}

/** The toolbar popup: what gains most now, gaps in one line, a round. */
export function Popup() {
  const popup = usePopup();
  const { first, stood, trouble, fail } = popup;
  const [run, setRun] = useState<Run | null>(null);
  const [done, setDone] = useState<Round[]>([]);
  const [choosing, setChoosing] = useState(false);
  const topics = stood?.standing.deck.topics ?? first?.topics;
  const names = useMemo(() => topicNames(topics ?? []), [topics]);
  if (!first) return <Trouble text={trouble} />;
  const { course } = first;
  if (!course) return <NoCourse trouble={trouble} />;

  const again = async ({ choice }: Run, round: Round) => {
    const rounds = [...done, round];
    setDone(rounds);
    try {
      // Settings may have changed in the desk meanwhile; what gains most has changed for certain.
      const reopened = await popup.reopen();
      const plan = choice
        ? planFrom(await popup.stand(course.id), choice)
        : (defaultPlan(reopened, null, rounds, Date.now()) ??
          defaultPlan({ ...reopened, queue: [] }, await popup.stand(course.id), rounds, Date.now()));
      setRun({ plan: plan!, choice, before: rounds.length });
    } catch (error) {
      fail(error);
      setRun(null);
    }
  };
  if (run)
    return (
      <PopupRound
        key={run.before}
        plan={run.plan}
        topicName={names}
        again={(round) => void again(run, round)}
        ended={popup.refresh}
      />
    );
  const plan = defaultPlan(first, stood, done, Date.now());
  const begin = (plan: RoundPlan, choice: RoundChoice | null) =>
    setRun({ plan, choice, before: done.length });
  return (
    <main class="stack">
      <CourseLine course={course} />
      <Trouble text={trouble} />
      {choosing ? (
        <Choosing
          stood={stood}
          minutes={first.settings.roundMinutes}
          back={() => setChoosing(false)}
          start={(choice) => begin(planFrom(stood!, choice), choice)}
        />
      ) : (
        <NextCard
          first={first}
          stood={stood}
          start={plan && (() => begin(plan, null))}
          choose={() => setChoosing(true)}
        />
      )}
      <KeepButton fail={fail} />
      <PdfButton fail={fail} />
      <PopupSearch courseId={course.id} fail={fail} />
    </main>
  );
}

const planFrom = ({ standing, at }: Stood, choice: RoundChoice) => planOf(standing, choice, at);

interface ChoosingProps {
  stood: Stood | null;
  minutes: number;
  back(): void;
  start(choice: RoundChoice): void;
}

/** Another round than the default one. */
function Choosing({ stood, minutes, back, start }: ChoosingProps) {
  return (
    <section class="next stack" aria-label={t('roundChoose')}>
      {stood ? (
        <RoundChoices
          standing={stood.standing}
          first={{ scope: { of: 'all' }, order: 'gain', minutes, turned: false }}
          start={start}
        />
      ) : (
        <p class="soft">{t('reading')}</p>
      )}
      <div>
        <button type="button" class="plain" onClick={back}>
          {t('roundChooseBack')}
        </button>
      </div>
    </section>
  );
}

function CourseLine({ course }: { course: Course }) {
  return (
    <header class="row popup-head">
      <h1>{course.name}</h1>
      <a href={deskLink('coverage')} target="_blank">
        {t('openDesk')}
      </a>
    </header>
  );
}

function NoCourse({ trouble }: { trouble: string | null }) {
  return (
    <main class="stack">
      <h1>{t('extName')}</h1>
      <Trouble text={trouble} />
      <p>{t('popupNoCourse')}</p>
      <div>
        <a class="button" href={deskLink('course')} target="_blank">
          {t('slipStartCourse')}
        </a>
      </div>
    </main>
  );
}
