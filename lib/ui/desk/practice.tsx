import { useMemo } from 'preact/hooks';
import { gainOfMinutes } from '#lib/recall/minutes-gain.ts';
import type { Ranked } from '#lib/recall/next-item.ts';
import { attemptsPerDay } from '../derive/attempts-per-day.ts';
import type { Standing } from '../derive/next-up.ts';
import { BarChart } from '../parts/bar-chart.tsx';
import { t, tn } from '../text.ts';

const MINUTES = 10;
const DAYS = 28;

interface PracticeProps {
  standing: Standing;
  /** The items in question, the one that gains most now first. */
  ranked: readonly Ranked[];
  topicName(id: string): string;
}

/** What ten minutes now would bring, and how much was practised of late. */
export function Practice({ standing, ranked, topicName }: PracticeProps) {
  const gain = useMemo(() => gainOfMinutes(ranked, MINUTES), [ranked]);
  const days = useMemo(
    () =>
      attemptsPerDay(
        standing.deck.attempts.map(({ at }) => at),
        Date.now(),
        DAYS,
      ),
    [standing],
  );
  const all = days.reduce((sum, { count }) => sum + count, 0);
  const practised = days.filter(({ count }) => count > 0).length;
  const marks = gain.marks.toLocaleString(undefined, { maximumFractionDigits: 1 });
  return (
    <section class="sheet stack narrow">
      <h2>{t('practiceTitle')}</h2>
      <p>
        {gain.most && marks !== '0'
          ? t('practiceGain', MINUTES, marks, topicName(gain.most.topicId))
          : t('practiceNoGain', MINUTES)}
      </p>
      <h3>{t('practiceDays')}</h3>
      <BarChart
        label={tn('practiceLabel', all, practised, days.at(-1)!.count)}
        bars={days.map(({ day, count }) => ({
          name: new Date(`${day}T12:00`).toLocaleDateString(undefined, { day: 'numeric', month: 'short' }),
          count,
        }))}
      />
      <p class="soft">{tn('practiceLabel', all, practised, days.at(-1)!.count)}</p>
    </section>
  );
}
