import type { Page } from 'playwright-core';

/** An event of Chromium's own tracing, as far as it is used; times are in microseconds. */
export interface TraceEvent {
  name: string;
  ph: string;
  pid: number;
  tid: number;
  ts: number;
  dur?: number;
  /** Processor time of the thread. */
  tdur?: number;
  args?: { data?: { type?: string } };
}

/** What Chromium notes down of a page while `work` is done. */
export async function traceOf(
  page: Page,
  categories: string[],
  work: () => Promise<void>,
): Promise<TraceEvent[]> {
  const session = await page.context().newCDPSession(page);
  const events: TraceEvent[] = [];
  session.on('Tracing.dataCollected', ({ value }) => events.push(...(value as unknown as TraceEvent[])));
  await session.send('Tracing.start', {
    transferMode: 'ReportEvents',
    traceConfig: { includedCategories: categories },
  });
  await work();
  const done = new Promise((resolve) => session.once('Tracing.tracingComplete', resolve));
  await session.send('Tracing.end');
  await done;
  return events;
}
