import { useMemo, useState } from 'preact/hooks';
import { MARKED, curveOf } from '../derive/curve.ts';
import type { Standing } from '../derive/next-up.ts';
import { LineChart } from '../parts/line-chart.tsx';
import { percent, t } from '../text.ts';

interface ForgettingProps {
  standing: Standing;
  /** The items that the curve is of. */
  ids: ReadonlySet<string>;
}

/** How items are being forgotten, up to exam day, with the attempts on it. */
export function Forgetting({ standing, ids }: ForgettingProps) {
  const curve = useMemo(() => curveOf(standing, ids, Date.now()), [standing, ids]);
  if (!curve) return null;
  const { points, attempts, from, to, now, then, isForExam } = curve;
  const values = [percent(now), percent(then), new Date(to).toLocaleDateString()];
  const name =
    ids.size === 1
      ? isForExam
        ? 'curveItemExam'
        : 'curveItem'
      : isForExam
        ? 'curveTopicExam'
        : 'curveTopic';
  return (
    <div class="stack">
      <p class="soft">{t(name, ...values)}</p>
      <LineChart
        label={t('curveLabel', ...values, attempts.length)}
        points={points}
        dots={attempts}
        from={from}
        to={to}
        mark={isForExam ? { at: to, word: t('examWord') } : undefined}
      />
      {attempts.length === MARKED && <p class="soft">{t('curveLatest', MARKED)}</p>}
    </div>
  );
}

/** The curve of one item, drawn when it is asked for. */
export function ItemForgetting({ standing, id }: { standing: Standing; id: string }) {
  const [open, setOpen] = useState(false);
  const ids = useMemo(() => new Set([id]), [id]);
  return (
    <details class="soft" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{t('curveOpen')}</summary>
      {open && <Forgetting standing={standing} ids={ids} />}
    </details>
  );
}
