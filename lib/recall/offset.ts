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
import { NOISE, THRESHOLD } from './activation.ts';

/** Standard deviation of the prior, in units of activation. Our choice. */
export const OFFSET_SD = 0.5;

/** The values of b that are weighed: three standard deviations to either side. */
export const OFFSETS: readonly number[] = Array.from({ length: 13 }, (_, i) => (i - 6) * 0.25);

/** Weights of the values in OFFSETS, of sum 1. */
export type Weights = readonly number[];

/** One attempt as evidence on the offset. */
export interface Trial {
  /** e^m just before it, with m the activation: above 0. */
  strength: number;
  /** Marks got / marks there were, 0 to 1. */
  fraction: number;
}

/** e^(b / s) for each value of b: with it a chance at all offsets takes one power, not thirteen. */
const FACTORS: readonly number[] = OFFSETS.map((b) => Math.exp(b / NOISE));

/** What is known of an offset: for each value in OFFSETS the logarithm of its weight, up to a constant of the item. */
export type Evidence = readonly number[];

/** What is known before the first attempt: the prior. */
export const noEvidence = (): number[] => OFFSETS.map((b) => -((b / OFFSET_SD) ** 2) / 2);

/**
 * Adds one more attempt to evidence, in place.
 *
 * Part marks weigh in as a fractional outcome f of one trial, with likelihood p^f (1-p)^(1-f): an attempt at n marks
 * is one piece of evidence and not n, since the parts of an answer stand or fall together.
 */
export function addTrial(evidence: number[], { strength, fraction }: Trial): void {
  const z = (Math.log(strength) - THRESHOLD) / NOISE;
  const odds = Math.exp(z);
  for (let i = 0; i < OFFSETS.length; i++) {
    // ln( p^f (1-p)^(1-f) ) = f z - ln(1 + e^z), with z = (m + b - tau) / s.
    evidence[i]! += fraction * (z + OFFSETS[i]! / NOISE) - Math.log1p(odds * FACTORS[i]!);
  }
}

/** The weights that evidence gives. */
export function weightsOf(evidence: Evidence): number[] {
  let highest = -Infinity;
  for (const log of evidence) if (log > highest) highest = log;
  const weights: number[] = [];
  let sum = 0;
  for (let i = 0; i < evidence.length; i++) {
    const weight = Math.exp(evidence[i]! - highest);
    weights.push(weight);
    sum += weight;
  }
  for (let i = 0; i < weights.length; i++) weights[i]! /= sum;
  return weights;
}

/** Mean chance of recall, 0 to 1, at a strength e^m over what b may be. */
export function meanChance(weights: Weights, strength: number): number {
  const odds = Math.exp((THRESHOLD - Math.log(strength)) / NOISE);
  let sum = 0;
  for (let i = 0; i < FACTORS.length; i++) sum += weights[i]! / (1 + odds / FACTORS[i]!);
  return Math.min(1, sum);
}

/** The mean of b: positive where the item comes easier to this student than most. */
export function meanOffset(weights: Weights): number {
  let sum = 0;
  for (let i = 0; i < OFFSETS.length; i++) sum += weights[i]! * OFFSETS[i]!;
  return sum;
}
