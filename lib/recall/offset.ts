/**
 * How much easier or harder one item is for this student than the model's common item: an offset b that is added
 * to activation m when the chance is taken. The offset and its numbers are our choice, not published; the model
 * alone treats all items alike.
 *
 * b has a normal prior of mean 0 and standard deviation OFFSET_SD. It is held as one weight for each value of a
 * small grid, so that attempts update it by Bayes' rule itself, however lopsided the evidence, and a chance is the
 * mean over what is still possible. That mean is also what the chance will be on average after the next attempt,
 * so a forecast of practice need not guess how the attempt will go.
 */
import { chanceOfRecall, NOISE, THRESHOLD } from './activation.ts';

/** Standard deviation of the prior, in units of activation. Our choice. */
export const OFFSET_SD = 0.5;

/** The values of b that are weighed: three standard deviations to either side. */
export const OFFSETS: readonly number[] = Array.from({ length: 13 }, (_, i) => (i - 6) * 0.25);

/** Weights of the values in OFFSETS, of sum 1. */
export type Weights = readonly number[];

/** One attempt as evidence on the offset. */
export interface Trial {
  /** Activation just before it, not -Infinity. */
  m: number;
  /** Marks got / marks there were, 0 to 1. */
  fraction: number;
}

/**
 * Weights after these attempts; the prior's for none.
 *
 * Part marks weigh in as a fractional outcome f of one trial, with likelihood p^f (1-p)^(1-f): an attempt at n marks
 * is one piece of evidence and not n, since the parts of an answer stand or fall together.
 */
export function weightsAfter(trials: readonly Trial[]): Weights {
  const logs = OFFSETS.map((b) => {
    let log = -((b / OFFSET_SD) ** 2) / 2;
    for (const { m, fraction } of trials) log += logLikelihood(m + b, fraction);
    return log;
  });
  const highest = Math.max(...logs);
  const weights = logs.map((log) => Math.exp(log - highest));
  const sum = weights.reduce((all, w) => all + w, 0);
  return weights.map((w) => w / sum);
}

/** Mean chance of recall, 0 to 1, at activation m over what b may be. */
export function meanChance(weights: Weights, m: number): number {
  let sum = 0;
  for (let i = 0; i < OFFSETS.length; i++) sum += (weights[i] ?? 0) * chanceOfRecall(m + (OFFSETS[i] ?? 0));
  return Math.min(1, sum);
}

/** The mean of b: positive where the item comes easier to this student than most. */
export const meanOffset = (weights: Weights): number =>
  weights.reduce((sum, w, i) => sum + w * (OFFSETS[i] ?? 0), 0);

/** ln( p^f (1-p)^(1-f) ) = f z - ln(1 + e^z), with z = (m - tau) / s, without overflow. */
function logLikelihood(m: number, fraction: number): number {
  const z = (m - THRESHOLD) / NOISE;
  return fraction * z - Math.max(0, z) - Math.log1p(Math.exp(-Math.abs(z)));
}
