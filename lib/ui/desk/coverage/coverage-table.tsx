import { useMemo, useState } from 'preact/hooks';
import type { Topic } from '#lib/model/topic.ts';
import type { TopicCoverage } from '#lib/syllabus/coverage.ts';
import { stakeOf } from '#lib/syllabus/stakes.ts';
import type { Standing } from '../../derive/next-up.ts';
import { topicName } from '../../parts/topic-name.ts';
import { percent, t } from '../../text.ts';
import { linkTo } from '../route.ts';
import { EvidenceList } from './evidence-list.tsx';
import { GapActions } from './gap-actions.tsx';
import { type Column, type Order, firstOrder, sorted } from './sort.ts';

/** Rows drawn at first: a syllabus of hundreds of topics still opens at once. */
const FIRST_ROWS = 60;

const COLUMNS = [
  ['topic', 'topic'],
  ['share', 'coverageShare'],
  ['secured', 'coverageSecured'],
  ['stake', 'coverageStake'],
  ['evidence', 'coverageEvidence'],
  ['next', 'coverageNext'],
] as const satisfies [Column, string][];

interface TableProps {
  rows: TopicCoverage[];
  standing: Standing;
  aimedId: string | null;
}

/** For each topic what is there and what is missing: worst first, or by any column. */
export function CoverageTable({ rows, standing, aimedId }: TableProps) {
  const { topics } = standing.deck;
  const byId = useMemo(() => new Map(topics.map((topic) => [topic.id, topic])), [topics]);
  const places = useMemo(() => new Map(topics.map(({ id, order }) => [id, order])), [topics]);
  const [order, setOrder] = useState<Order | null>(null);
  const [all, setAll] = useState(false);
  const inOrder = useMemo(() => sorted(rows, order, places), [rows, order, places]);
  const shown = all ? inOrder : inOrder.slice(0, FIRST_ROWS);
  const turn = (column: Column) =>
    setOrder(order?.column === column ? { column, isDown: !order.isDown } : firstOrder(column));
  return (
    <>
      <table class="coverage">
        <caption class="unseen">{t('coverageCaption')}</caption>
        <thead>
          <tr>
            {COLUMNS.map(([column, name]) => (
              <th
                key={column}
                scope="col"
                class={isNumber(column) ? 'number' : ''}
                aria-sort={order?.column === column ? (order.isDown ? 'descending' : 'ascending') : undefined}
              >
                <button class="plain sort" onClick={() => turn(column)}>
                  {t(name)}
                  <span aria-hidden="true">{arrow(order, column)}</span>
                </button>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {shown.map((row) => (
            <Row
              key={row.topicId}
              row={row}
              topic={byId.get(row.topicId)!}
              aimed={aimedId === row.topicId}
              standing={standing}
            />
          ))}
        </tbody>
      </table>
      <div class="row">
        {order && <button onClick={() => setOrder(null)}>{t('coverageWorst')}</button>}
        {shown.length < rows.length && (
          <button onClick={() => setAll(true)}>{t('coverageAll', rows.length)}</button>
        )}
      </div>
    </>
  );
}

const isNumber = (column: Column): boolean => ['share', 'secured', 'stake'].includes(column);

function arrow(order: Order | null, column: Column): string {
  if (order?.column !== column) return '';
  return order.isDown ? ' ↓' : ' ↑';
}

interface RowProps {
  row: TopicCoverage;
  topic: Topic;
  aimed: boolean;
  standing: Standing;
}

function Row({ row, topic, aimed, standing }: RowProps) {
  const stake = stakeOf(row);
  return (
    <tr>
      <th scope="row">
        <a href={linkTo(`topic/${topic.id}`)}>{topicName(topic)}</a>
      </th>
      <td class="number" data-label={t('coverageShare')}>
        {percent(row.share, 1)}
      </td>
      <td class="number" data-label={t('coverageSecured')}>
        {percent(row.securedPart)}
      </td>
      <td class="number" data-label={t('coverageStake')}>
        {percent(stake.part, 1)}
        <span class="soft limits"> {t('between', percent(stake.low, 1), percent(stake.high, 1))}</span>
      </td>
      <td>
        <EvidenceList evidence={row.evidence} />
      </td>
      <td>
        <GapActions row={row} aimed={aimed} standing={standing} />
      </td>
    </tr>
  );
}
