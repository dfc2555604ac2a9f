/**
 * Worked example of the activation model of Pavlik & Anderson (2005), Cognitive Science 29(4), 559-586,
 * doi 10.1207/s15516709cog0000_14, as the ACT-R spacing-effect module gives it and attributes it to the paper.
 *
 * Presentations at 0, 126, 252 and 4844 s; test at 5877 s. `m` is activation just before the moment, `decay` that of
 * the presentation then. The module reckons in single precision: compare m and decay to 1e-6.
 * `p` is recomputed, from s = 0.255 and tau = -0.704, which one secondary lineage gives (medium confidence).
 */
export const WORKED_EXAMPLE = {
  presentations: [0, 126, 252, 4844],
  test: 5877,
  rows: [
    { at: 126, m: -0.8560219, decay: 0.2691922, p: 0.3552 },
    { at: 252, m: -0.43415272, decay: 0.31757548, p: 0.7424 },
    { at: 4844, m: -0.9314301, decay: 0.26249582, p: 0.2907 },
    { at: 5877, m: -0.61873615, decay: null, p: 0.5828 },
  ],
} as const;

/** From the same module: presentations at 0 and 5344.05 s alone, and at 0 s alone; m is printed to three places. */
export const TWO_PRESENTATIONS = {
  presentations: [0, 5344.05],
  before: { at: 5344, m: -1.519 },
  secondDecay: 0.22449267,
  after: { at: 5877, m: -0.778 },
  withoutSecond: { at: 5877, m: -1.536 },
} as const;
