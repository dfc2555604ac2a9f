import type { Page } from 'playwright-core';
import { traceOf } from './trace.ts';

const CATEGORIES = ['toplevel', 'devtools.timeline', 'loading'];

/**
 * The longest task on a page's main thread from its first paint on, in ms of processor time: what it would block the
 * page for on a machine with nothing else to do.
 * @param work opens the page, and waits for what is to be measured
 */
export async function longestTask(page: Page, work: () => Promise<void>): Promise<number> {
  const events = await traceOf(page, CATEGORIES, work);
  const paint = events.find(({ name }) => name === 'firstContentfulPaint');
  if (!paint) throw new Error('The trace has no first paint');
  const tasks = events.filter(
    ({ name, ph, pid, tid, ts, dur = 0 }) =>
      name.endsWith('RunTask') &&
      ph === 'X' &&
      pid === paint.pid &&
      tid === paint.tid &&
      ts + dur >= paint.ts,
  );
  if (tasks.length === 0) throw new Error('The trace has no tasks');
  return Math.max(...tasks.map(({ tdur = 0 }) => tdur)) / 1000;
}
