/**
 * Quantiles of Beta distributions, in the order of CHANCES, to six places: computed with SciPy 1.17.1
 * (scipy.stats.beta.ppf).
 */
export const CHANCES = [0.025, 0.05, 0.5, 0.95, 0.975] as const;
export const BETA_QUANTILES = [
  { a: 2, b: 8, quantiles: [0.028145, 0.041023, 0.17962, 0.429136, 0.482497] },
  { a: 9, b: 3, quantiles: [0.482244, 0.529913, 0.764214, 0.92118, 0.939782] },
] as const;
