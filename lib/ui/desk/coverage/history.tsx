import { useMemo } from 'preact/hooks';
import type { TopicCoverage } from '#lib/syllabus/coverage.ts';
import { examMoment } from '../../derive/days.ts';
import { historyOf } from '../../derive/history.ts';
import type { Standing } from '../../derive/next-up.ts';
import { LineChart } from '../../parts/line-chart.tsx';
import { percent, t } from '../../text.ts';

/** The end of a calendar day, in epoch ms. */
const endOf = (day: string): number => new Date(`${day}T23:59:59`).getTime();

/** How the secured part of the exam grew. */
export function History({ standing, rows }: { standing: Standing; rows: readonly TopicCoverage[] }) {
  const days = useMemo(() => historyOf(standing, rows), [standing, rows]);
  const first = standing.deck.attempts.reduce((earliest, { at }) => Math.min(earliest, at), Infinity);
  const last = days.at(-1);
  if (!last)
    return (
      <section class="stack">
        <h2>{t('historyTitle')}</h2>
        <p class="soft">{t('historyNone')}</p>
      </section>
    );
  const now = Date.now();
  const examAt = examMoment(standing.deck.course.examDay);
  const points = [
    { at: first, part: 0 },
    ...days.map(({ day, secured }) => ({ at: Math.min(endOf(day), now), part: secured })),
    { at: now, part: last.secured },
  ];
  return (
    <section class="stack">
      <h2>{t('historyTitle')}</h2>
      <LineChart
        label={t('historyLabel', percent(last.secured), new Date(first).toLocaleDateString())}
        points={points}
        from={first}
        to={examAt !== null && examAt > now ? examAt : now}
        mark={examAt !== null && examAt > now ? { at: examAt, word: t('examWord') } : undefined}
        isStepped
      />
      <details>
        <summary>{t('historyTable')}</summary>
        <table class="numbers">
          <thead>
            <tr>
              <th scope="col">{t('historyDay')}</th>
              <th scope="col">{t('coverageSecured')}</th>
            </tr>
          </thead>
          <tbody>
            {days.map(({ day, secured }) => (
              <tr key={day}>
                <th scope="row">{new Date(endOf(day)).toLocaleDateString()}</th>
                <td>{percent(secured, 1)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </details>
    </section>
  );
}
