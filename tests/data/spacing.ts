/**
 * Best gap between two study sessions, by the delay from the second one to the test.
 * Cepeda, Vul, Rohrer, Wixted & Pashler (2008), Psychological Science 19(11), 1095-1102,
 * doi 10.1111/j.1467-9280.2008.02209.x; values as two or more independent secondary texts give them.
 *
 * `tested` is the best of the gaps that were tried, `interpolated` the authors' interpolation; all in days. Their
 * abstract: the best gap grows with the delay, while its ratio to the delay falls.
 */
export const BEST_GAPS = [
  { delay: 7, tested: 1, interpolated: 3 },
  { delay: 35, tested: 11, interpolated: 8 },
  { delay: 70, tested: 21, interpolated: 12 },
  { delay: 350, tested: 21, interpolated: 27 },
] as const;
