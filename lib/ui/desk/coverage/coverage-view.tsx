import { useMemo } from 'preact/hooks';
import type { TopicCoverage } from '#lib/syllabus/coverage.ts';
import { securedOverall } from '#lib/syllabus/stakes.ts';
import { readSettings } from '#lib/store/actions/courses.ts';
import { useDeck } from '../../deck/deck-context.tsx';
import { daysUntil } from '../../derive/days.ts';
import type { Standing } from '../../derive/next-up.ts';
import { coverDeck } from '../../derive/progress.ts';
import { percent, t, tn } from '../../text.ts';
import { useLive } from '../../use-live.ts';
import { linkTo } from '../route.ts';
import { CoverageTable } from './coverage-table.tsx';
import { History } from './history.tsx';
import { CoverageMap } from './map.tsx';

/** What the syllabus asks and the deck can show: overall, as a map, topic by topic, and over time. */
export function CoverageView({ standing }: { standing: Standing }) {
  const db = useDeck();
  const { deck, progress } = standing;
  const coverage = useMemo(() => coverDeck(deck, progress), [deck, progress]);
  const settings = useLive(() => readSettings(db), ['settings'], 'settings');
  if (coverage.topics.length === 0) return <NoSyllabus />;
  return (
    <div class="stack">
      <div class="row apart">
        <h1>{t('pageCoverage')}</h1>
        <p class="row">
          <a href={linkTo('checklist')}>{t('checklistOpen')}</a>
          <a href={linkTo('report')}>{t('reportOpen')}</a>
        </p>
      </div>
      <Summary standing={standing} topics={coverage.topics} />
      <CoverageMap topics={deck.topics} rows={coverage.topics} />
      <CoverageTable
        rows={coverage.topics}
        standing={standing}
        aimedId={settings.state === 'ready' ? settings.value.aimedTopicId : null}
      />
      <History standing={standing} rows={coverage.topics} />
    </div>
  );
}

function Summary({ standing, topics }: { standing: Standing; topics: TopicCoverage[] }) {
  const { examDay } = standing.deck.course;
  const empty = topics.filter(({ evidence }) => evidence.clips === 0).length;
  const days = examDay === null ? null : daysUntil(examDay, Date.now());
  const { questions, course } = standing.deck;
  const { part, low, high } = securedOverall(topics);
  return (
    <div class="summary">
      <p>
        <strong>{empty === 0 ? t('popupNoGaps') : tn('popupGaps', empty, topics.length)}</strong>{' '}
        <span class="soft">
          {days === null && t('examUnknown')}
          {days !== null && (days >= 0 ? tn('examIn', days) : t('examPast'))}
        </span>
      </p>
      <p>
        {t('securedOverall', percent(part), percent(low), percent(high))}{' '}
        <span class="soft">{t('securedMeaning')}</span>
      </p>
      <p class="soft">{t('questionsOf', questions.length, course.targetQuestions)}</p>
    </div>
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
