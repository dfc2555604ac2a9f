/**
 * Wilson score intervals at 95 %, to four places. Newcombe (1998), Statistics in Medicine 17, 857-872, table I, method 3;
 * the limits recomputed by the formula in the NIST/SEMATECH e-Handbook of Statistical Methods, 7.2.4.1.
 */
export const NEWCOMBE = [
  { successes: 81, tried: 263, low: 0.2553, high: 0.3662 },
  { successes: 15, tried: 148, low: 0.0624, high: 0.1605 },
] as const;
