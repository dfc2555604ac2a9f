import type { Page } from 'playwright-core';
import { traceOf } from './trace.ts';

const CATEGORIES = ['toplevel', 'devtools.timeline'];

/**
 * What each key that is typed in `work` takes of the page's main thread until the next one, drawing included, in ms of
 * processor time: what it would take on a machine with nothing else to do.
 */
export async function keyTimes(page: Page, work: () => Promise<void>): Promise<number[]> {
  const events = await traceOf(page, CATEGORIES, work);
  const keys = events
    .filter(({ name, args }) => name === 'EventDispatch' && args?.data?.type === 'keydown')
    .sort((a, b) => a.ts - b.ts);
  const first = keys[0];
  if (!first) throw new Error('The trace has no keys');
  const tasks = events.filter(
    ({ name, ph, pid, tid }) =>
      name.endsWith('RunTask') && ph === 'X' && pid === first.pid && tid === first.tid,
  );
  const times = keys.map(() => 0);
  // A task begins a little before the key that it hands on.
  const starts = keys.map(({ ts }) =>
    Math.max(...tasks.filter((task) => task.ts <= ts).map((task) => task.ts)),
  );
  for (const { ts, tdur = 0 } of tasks) {
    const key = starts.findLastIndex((start) => ts >= start);
    if (key >= 0) times[key]! += tdur / 1000;
  }
  return times;
}
