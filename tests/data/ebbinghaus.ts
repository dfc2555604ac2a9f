/**
 * Savings in relearning after a time, in percent: Ebbinghaus (1885; tr. Ruger & Bussenius 1913), Memory, ch. VII, pp.
 * 76-79. By one subject, and not a chance of recall. b = 100 k / ((log10 t)^c + k), t in minutes from one minute before
 * the end of learning. `computed` is as he printed it; at 64 minutes the formula gives 46.77.
 */
export const SAVINGS = {
  k: 1.84,
  c: 1.25,
  rows: [
    { minutes: 20, observed: 58.2, computed: 57.0 },
    { minutes: 64, observed: 44.2, computed: 46.7 },
    { minutes: 526, observed: 35.8, computed: 34.5 },
    { minutes: 1440, observed: 33.7, computed: 30.4 },
    { minutes: 2880, observed: 27.8, computed: 28.1 },
    { minutes: 8640, observed: 25.4, computed: 24.9 },
    { minutes: 44_640, observed: 21.1, computed: 21.2 },
  ],
} as const;
