import type { Evidence } from './evidence.ts';
import { BEST_POWER, INSIDE, LEAST_BEST, LEAST_SPREAD, SHARPNESS, SPREAD_POWER } from './weights.ts';

/**
 * The chance of each topic: exp(s * score) over the sum of the same for all topics. The sharpness s falls with the
 * best score and with the spread of the scores (their standard deviation): where words tell much, as within one
 * subject, scores lie far apart, and a lead of one is worth less.
 */
export function chancesOf({ scores }: Evidence): Float64Array {
  const best = Math.max(...scores);
  const sharpness =
    SHARPNESS *
    (spreadOf(scores) + LEAST_SPREAD) ** -SPREAD_POWER *
    Math.max(LEAST_BEST, best) ** -BEST_POWER;
  const odds = scores.map((score) => Math.exp(sharpness * (score - best)));
  const sum = odds.reduce((total, odd) => total + odd, 0);
  return odds.map((odd) => odd / sum);
}

function spreadOf(scores: Float64Array): number {
  const mean = scores.reduce((sum, score) => sum + score, 0) / scores.length;
  return Math.sqrt(scores.reduce((sum, score) => sum + (score - mean) ** 2, 0) / scores.length);
}

/**
 * Whether a passage looks outside the syllabus: it lies where texts of any kind lie rather than where the course
 * does, and shares few telling words with any topic. The first part is the log likelihood ratio of two normal
 * distributions of the same width; where the course is as wide as English itself, it says nothing.
 */
export function looksOutside({ course, words }: Evidence): boolean {
  const { passage, inside, outside } = course;
  const ratio = (inside - outside) * (passage - (inside + outside) / 2);
  return INSIDE.course * ratio + INSIDE.words * Math.max(...words) < INSIDE.least;
}
