import type { Statement, Topic } from '#lib/model/topic.ts';
import { topicName } from '../parts/topic-name.ts';
import { t } from '../text.ts';

/** The statements of a topic that count, in their order. */
export const statementsOf = (statements: readonly Statement[], topicId: string): Statement[] =>
  statements.filter((one) => one.topicId === topicId && !one.off);

interface TicksProps {
  statements: Statement[];
  ticked: string[];
  tick(statementIds: string[]): void;
  legend: string;
  /** The legend is said elsewhere, to those who see. */
  isLegendSeen?: boolean;
}

/** A box for each statement, to say which of them something answers; nothing where there is none. */
export function StatementTicks({ statements, ticked, tick, legend, isLegendSeen = true }: TicksProps) {
  if (statements.length === 0) return null;
  return (
    <fieldset class="field ticks">
      <legend class={isLegendSeen ? '' : 'unseen'}>{legend}</legend>
      {statements.map(({ id, code, text }) => (
        <label class="check" key={id}>
          <input
            type="checkbox"
            checked={ticked.includes(id)}
            onChange={(event) =>
              tick(event.currentTarget.checked ? [...ticked, id] : ticked.filter((one) => one !== id))
            }
          />
          <span class="wrap">{`${code} ${text}`.trim()}</span>
        </label>
      ))}
    </fieldset>
  );
}

type ItemTicksProps = Omit<TicksProps, 'legend' | 'isLegendSeen'>;

/** The boxes of a question or line, folded away: it is written without them as well. */
export function ItemTicks({ statements, ticked, tick }: ItemTicksProps) {
  if (statements.length === 0) return null;
  const here = statements.filter(({ id }) => ticked.includes(id)).length;
  return (
    <details>
      <summary>{t('ticksItem', here, statements.length)}</summary>
      <StatementTicks
        statements={statements}
        ticked={ticked}
        tick={tick}
        legend={t('ticksItemLegend')}
        isLegendSeen={false}
      />
    </details>
  );
}

interface ClipTicksProps {
  topics: Topic[];
  statements: Statement[];
  topicIds: string[];
  ticked: string[];
  tick(statementIds: string[]): void;
}

/** The boxes of a clip, for each topic that it stands under. */
export function ClipTicks({ topics, statements, topicIds, ticked, tick }: ClipTicksProps) {
  return (
    <>
      {topics
        .filter(({ id }) => topicIds.includes(id))
        .map((topic) => (
          <StatementTicks
            key={topic.id}
            statements={statementsOf(statements, topic.id)}
            ticked={ticked}
            tick={tick}
            legend={t('ticksClip', topicName(topic))}
          />
        ))}
    </>
  );
}
