import type { Selector } from '#lib/model/selector.ts';
import { passageSteps } from './find-passage.ts';
import type { Found } from './found.ts';
import { readPageText } from './page-text.ts';

/** What finding needs of the world around it. */
export interface Pace {
  /** Milliseconds on any clock. */
  now(): number;
  /** Lets the page do other work first. */
  pause(): Promise<void>;
  /** How many milliseconds may pass before a pause. */
  budget?: number;
}

const BUDGET_MS = 12;

/**
 * Finds many passages under a node, in pieces with pauses between them, so that the page stays quick to the touch.
 * Each is given out as soon as it is known, with null for one that is gone.
 */
export async function* findPassages<T extends { selectors: readonly Selector[] }>(
  root: Node,
  wanted: readonly T[],
  { now, pause, budget = BUDGET_MS }: Pace,
): AsyncGenerator<{ wanted: T; found: Found | null }> {
  if (wanted.length === 0) return;
  let started = now();
  const rest = async () => {
    if (now() - started < budget) return;
    await pause();
    started = now();
  };
  const page = readPageText(root);
  for (const each of wanted) {
    const steps = passageSteps(page, each.selectors);
    let step = steps.next();
    for (; !step.done; step = steps.next()) await rest();
    yield { wanted: each, found: step.value };
    await rest();
  }
}
