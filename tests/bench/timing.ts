/** The middle value; the mean of the middle two of an even count. */
export function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const upper = sorted[sorted.length >> 1];
  const lower = sorted[(sorted.length - 1) >> 1];
  if (upper === undefined || lower === undefined) throw new Error('The median of nothing');
  return (lower + upper) / 2;
}

/** Medians, in ms, of two things that were timed in turns. */
export interface Pair {
  ours: number;
  other: number;
}

export interface Turns {
  /** Counted rounds. */
  repeats: number;
  /** Rounds before them, which warm up caches and compilers. */
  warmUp?: number;
}

/** On a slow or busy machine fewer rounds are counted, never below FEWEST: the whole bench has to end. */
const LONGEST_MS = 40_000;
const FEWEST = 5;

/** Times two things in turns, so that whatever disturbs the machine falls on both; each gives its own ms. */
export async function inTurns(
  { repeats, warmUp = 0 }: Turns,
  ours: () => number | Promise<number>,
  other: () => number | Promise<number>,
): Promise<Pair> {
  const taken = { ours: [] as number[], other: [] as number[] };
  const deadline = performance.now() + LONGEST_MS;
  for (let round = -warmUp; round < repeats; round++) {
    if (round >= FEWEST && performance.now() > deadline) break;
    const one = await ours();
    const two = await other();
    if (round < 0) continue;
    taken.ours.push(one);
    taken.other.push(two);
  }
  return { ours: median(taken.ours), other: median(taken.other) };
}

/** How long some work takes, in ms. */
export async function took(work: () => unknown): Promise<number> {
  const start = performance.now();
  await work();
  return performance.now() - start;
}

/** How long some work takes that never waits, in ms; `times` over, for work too short for the clock. */
export function tookOnce(work: () => unknown, times = 1): number {
  const start = performance.now();
  // What comes out is kept where the compiler cannot see that nobody reads it.
  for (let i = 0; i < times; i++) kept = work();
  return (performance.now() - start) / times;
}

let kept: unknown;
/** The latest result that `tookOnce` kept. */
export const lastResult = (): unknown => kept;
