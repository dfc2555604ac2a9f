import type { Steps } from '#lib/recall/steps.ts';

/** Work goes on no longer than this before the page gets its turn, in ms: less than a frame. */
const SLICE_MS = 8;
/** Steps are short: the clock is looked at after so many. */
const STEPS = 32;

/** Works steps off in slices, so that the page stays quick meanwhile. */
export async function inSlices<T>(steps: Steps<T>): Promise<T> {
  let until = performance.now() + SLICE_MS;
  for (let count = 1; ; count++) {
    const { done, value } = steps.next();
    if (done) return value;
    if (count % STEPS !== 0 || performance.now() < until) continue;
    await pause();
    until = performance.now() + SLICE_MS;
  }
}

/** Lets the page do what waits. A message comes back at once, where timers are held up after a few. */
export function pause(): Promise<void> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(null);
  });
}
