import type { CDPSession, Page } from 'playwright-core';

/** An event of Chromium's own tracing, as far as it is used; times are in microseconds. */
interface TraceEvent {
  name: string;
  ph: string;
  pid: number;
  tid: number;
  ts: number;
  /** Processor time of the thread. */
  tdur?: number;
  args?: { data?: { type?: string } };
}

const CATEGORIES = ['toplevel', 'devtools.timeline'];

/**
 * What each key that is typed in `work` takes of the page's main thread until the next one, drawing included, in ms of
 * processor time: what it would take on a machine with nothing else to do.
 */
export async function keyTimes(page: Page, work: () => Promise<void>): Promise<number[]> {
  const session = await page.context().newCDPSession(page);
  const events: TraceEvent[] = [];
  session.on('Tracing.dataCollected', ({ value }) => events.push(...(value as unknown as TraceEvent[])));
  await session.send('Tracing.start', {
    transferMode: 'ReportEvents',
    traceConfig: { includedCategories: CATEGORIES },
  });
  await work();
  await traced(session);
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

async function traced(session: CDPSession): Promise<void> {
  const done = new Promise((resolve) => session.once('Tracing.tracingComplete', resolve));
  await session.send('Tracing.end');
  await done;
}
