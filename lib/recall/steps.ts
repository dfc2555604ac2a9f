/** Long work that may be paused at each step, so that a page can answer in between. */
export type Steps<T> = Generator<undefined, T, undefined>;

/** Works all steps off at once. */
export function finish<T>(steps: Steps<T>): T {
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
  }
}
