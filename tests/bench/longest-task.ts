import type { CDPSession, Page } from 'playwright-core';

/** An event of Chromium's own tracing, as far as it is used; times are in microseconds. */
interface TraceEvent {
  name: string;
  ph: string;
  pid: number;
  tid: number;
  ts: number;
  dur?: number;
  /** Processor time of the thread. */
  tdur?: number;
}

const CATEGORIES = ['toplevel', 'devtools.timeline', 'loading'];

/**
 * The longest task on a page's main thread from its first paint on, in ms of processor time: what it would block the
 * page for on a machine with nothing else to do.
 * @param work opens the page, and waits for what is to be measured
 */
export async function longestTask(page: Page, work: () => Promise<void>): Promise<number> {
  const session = await page.context().newCDPSession(page);
  const events: TraceEvent[] = [];
  session.on('Tracing.dataCollected', ({ value }) => events.push(...(value as unknown as TraceEvent[])));
  await session.send('Tracing.start', {
    transferMode: 'ReportEvents',
    traceConfig: { includedCategories: CATEGORIES },
  });
  await work();
  await traced(session);
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

async function traced(session: CDPSession): Promise<void> {
  const done = new Promise((resolve) => session.once('Tracing.tracingComplete', resolve));
  await session.send('Tracing.end');
  await done;
}
