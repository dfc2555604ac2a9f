import type { RoundOrder } from '#lib/model/round-order.ts';
import { useMemo, useState } from 'preact/hooks';
import { weakTopics } from '#lib/recall/weak-topics.ts';
import type { BriefStanding } from '../derive/next-up.ts';
import { topicName, topicNames } from '../parts/topic-name.ts';
import { percent, t, tn } from '../text.ts';
import { type RoundChoice, type Scope, itemsOf, withAbove } from './choice.ts';

const MINUTES = Array.from({ length: 20 }, (_, i) => i + 1);

const ORDERS = {
  gain: 'orderGain',
  forward: 'orderForward',
  backToFront: 'orderBackToFront',
  outOfOrder: 'orderOutOfOrder',
} as const satisfies Record<RoundOrder, string>;

/** As many weak topics are named. */
const NAMED = 3;

interface RoundChoicesProps {
  standing: BriefStanding;
  /** What is chosen at first. */
  first: RoundChoice;
  start(choice: RoundChoice): void;
}

/** What a round is over, in which order and how long: every choice has its own default. */
export function RoundChoices({ standing, first, start }: RoundChoicesProps) {
  const [choice, setChoice] = useState(first);
  const change = (part: Partial<RoundChoice>) => setChoice((before) => ({ ...before, ...part }));
  const count = useMemo(() => itemsOf(standing, choice.scope).length, [standing, choice.scope]);
  return (
    <form
      class="stack"
      onSubmit={(event) => {
        event.preventDefault();
        if (count > 0) start(choice);
      }}
    >
      <ScopeField standing={standing} scope={choice.scope} set={(scope) => change({ scope })} />
      <div class="choices">
        <div class="field">
          <label for="round-order">{t('roundOrder')}</label>
          <select
            id="round-order"
            value={choice.order}
            onChange={(event) => change({ order: event.currentTarget.value as RoundOrder })}
          >
            {Object.entries(ORDERS).map(([order, name]) => (
              <option key={order} value={order}>
                {t(name as 'orderGain')}
              </option>
            ))}
          </select>
        </div>
        <div class="field">
          <label for="round-length">{t('roundMinutes')}</label>
          <select
            id="round-length"
            value={choice.minutes}
            onChange={(event) => change({ minutes: Number(event.currentTarget.value) })}
          >
            {MINUTES.map((minutes) => (
              <option key={minutes} value={minutes}>
                {tn('minutes', minutes)}
              </option>
            ))}
          </select>
        </div>
      </div>
      <label class="check">
        <input
          type="checkbox"
          checked={choice.turned}
          onChange={(event) => change({ turned: event.currentTarget.checked })}
        />
        {t('roundTurn')}
      </label>
      <div class="row">
        <button class="main" disabled={count === 0}>
          {tn('roundStart', choice.minutes)}
        </button>
        <span class="soft" role="status">
          {count === 0 ? t('roundNoItems') : tn('roundItems', count)}
        </span>
      </div>
    </form>
  );
}

interface ScopeFieldProps {
  standing: BriefStanding;
  scope: Scope;
  set(scope: Scope): void;
}

function ScopeField({ standing, scope, set }: ScopeFieldProps) {
  const { deck, ranked } = standing;
  // Topics with something to ask, in them or below.
  const topics = useMemo(() => {
    const asked = withAbove(deck, ranked);
    return deck.topics.filter(({ id }) => asked.has(id));
  }, [deck, ranked]);
  return (
    <div class="field">
      <label for="round-scope">{t('roundScope')}</label>
      <select
        id="round-scope"
        value={scope.of === 'topic' ? scope.topicId : scope.of}
        onChange={({ currentTarget: { value } }) =>
          set(
            value === 'all' || value === 'weak' || value === 'unclear'
              ? { of: value }
              : { of: 'topic', topicId: value },
          )
        }
      >
        <option value="all">{t('scopeAll')}</option>
        <option value="weak">{t('scopeWeak')}</option>
        <option value="unclear">{t('scopeUnclear')}</option>
        <optgroup label={t('scopeTopic')}>
          {topics.map((topic) => (
            <option key={topic.id} value={topic.id}>
              {topicName(topic)}
            </option>
          ))}
        </optgroup>
      </select>
      {scope.of === 'weak' && <WeakTopics standing={standing} />}
    </div>
  );
}

/** The weakest topics with what is to be expected of them. */
function WeakTopics({ standing: { ranked, deck } }: { standing: BriefStanding }) {
  const names = topicNames(deck.topics);
  const weak = weakTopics(ranked);
  if (weak.length === 0) return <p class="soft">{t('weakNone')}</p>;
  const named = weak
    .slice(0, NAMED)
    .map(({ topicId, part }) => t('weakTopic', names(topicId), percent(part)));
  return <p class="soft">{tn('weakTopics', weak.length, named.join('; '))}</p>;
}
