/** A page that is hidden paints nothing: then work waits no longer than this, in ms. */
const LONGEST_WAIT = 250;

/** Calls `work` once what was rendered is on its way to the screen: two frames on. Gives what calls it off. */
export function afterPaint(work: () => void): () => void {
  let frame = requestAnimationFrame(() => {
    frame = requestAnimationFrame(run);
  });
  const timer = setTimeout(run, LONGEST_WAIT);
  function stop() {
    cancelAnimationFrame(frame);
    clearTimeout(timer);
  }
  function run() {
    stop();
    work();
  }
  return stop;
}
