/** Whether a path leads further down from another. */
export const isWithin = (path: readonly string[], other: readonly string[]): boolean =>
  path.length > other.length && other.every((step, i) => step === path[i]);

/** Whether two paths differ in their last step only, and by one. */
export function isNext(path: readonly string[], other: readonly string[]): boolean {
  return isBeside(path, other) && path.length > 1 && Number(path.at(-1)) === Number(other.at(-1)) + 1;
}

/** Whether two paths differ in their last step only. */
export const isBeside = (path: readonly string[], other: readonly string[]): boolean =>
  path.length === other.length && other.slice(0, -1).every((step, i) => step === path[i]);
