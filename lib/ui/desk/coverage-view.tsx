import { useMemo, useState } from 'preact/hooks';
import type { Topic } from '#lib/model/topic.ts';
import type { TopicCoverage } from '#lib/syllabus/coverage.ts';
import { readSettings } from '#lib/store/actions/courses.ts';
import { useDeck } from '../deck/deck-context.tsx';
import { daysUntil } from '../derive/days.ts';
import type { Standing } from '../derive/next-up.ts';
import { coverDeck } from '../derive/progress.ts';
import { topicName } from '../parts/topic-name.ts';
import { t, tn } from '../text.ts';
import { useLive } from '../use-live.ts';
import { EvidenceList } from './evidence-list.tsx';
import { GapActions } from './gap-actions.tsx';
import { linkTo } from './route.ts';

/** Rows drawn at first: a syllabus of hundreds of topics still opens at once. */
const FIRST_ROWS = 60;

/** For each topic what is there and what is missing, worst first. */
export function CoverageView({ standing }: { standing: Standing }) {
  const db = useDeck();
  const { deck, progress } = standing;
  const coverage = useMemo(() => coverDeck(deck, progress), [deck, progress]);
  const byId = useMemo(() => new Map(deck.topics.map((topic) => [topic.id, topic])), [deck]);
  const settings = useLive(() => readSettings(db), ['settings'], 'settings');
  const [all, setAll] = useState(false);
  const aimed = settings.state === 'ready' ? settings.value.aimedTopicId : null;
  if (coverage.topics.length === 0) return <NoSyllabus />;
  const rows = all ? coverage.topics : coverage.topics.slice(0, FIRST_ROWS);
  return (
    <div class="stack">
      <h1>{t('pageCoverage')}</h1>
      <Summary standing={standing} topics={coverage.topics} />
      <table class="coverage">
        <caption class="unseen">{t('coverageCaption')}</caption>
        <thead>
          <tr>
            <th scope="col">{t('topic')}</th>
            <th scope="col" class="number">
              {t('coverageShare')}
            </th>
            <th scope="col">{t('coverageEvidence')}</th>
            <th scope="col">{t('coverageNext')}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <Row
              key={row.topicId}
              row={row}
              topic={byId.get(row.topicId)!}
              aimed={aimed === row.topicId}
              standing={standing}
            />
          ))}
        </tbody>
      </table>
      {rows.length < coverage.topics.length && (
        <div>
          <button onClick={() => setAll(true)}>{t('coverageAll', coverage.topics.length)}</button>
        </div>
      )}
    </div>
  );
}

function Summary({ standing, topics }: { standing: Standing; topics: TopicCoverage[] }) {
  const { examDay } = standing.deck.course;
  const empty = topics.filter(({ evidence }) => evidence.clips === 0).length;
  const days = examDay === null ? null : daysUntil(examDay, Date.now());
  return (
    <p class="summary">
      <strong>{empty === 0 ? t('popupNoGaps') : tn('popupGaps', empty, topics.length)}</strong>{' '}
      <span class="soft">
        {days === null && t('examUnknown')}
        {days !== null && (days >= 0 ? tn('examIn', days) : t('examPast'))}
      </span>
    </p>
  );
}

interface RowProps {
  row: TopicCoverage;
  topic: Topic;
  aimed: boolean;
  standing: Standing;
}

function Row({ row, topic, aimed, standing }: RowProps) {
  return (
    <tr>
      <th scope="row">
        <a href={linkTo(`topic/${topic.id}`)}>{topicName(topic)}</a>
      </th>
      <td class="number" data-label={t('coverageShare')}>
        {row.share.toLocaleString(undefined, { style: 'percent', maximumFractionDigits: 1 })}
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

function NoSyllabus() {
  return (
    <div class="stack">
      <h1>{t('pageCoverage')}</h1>
      <div class="sheet stack narrow">
        <p>{t('coverageNoSyllabus')}</p>
        <div>
          <a class="button" href={linkTo('syllabus')}>
            {t('syllabusBring')}
          </a>
        </div>
      </div>
    </div>
  );
}
