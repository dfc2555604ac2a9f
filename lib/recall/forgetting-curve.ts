/** A point of a curve: a moment, and what holds then. */
export interface CurvePoint {
  at: number;
  value: number;
}

/**
 * Points of a forgetting curve from one moment to another, for a picture: a fall is steep just after practice and
 * flat later, so that after each practice the points lie close at first and ever farther apart. At a practice there
 * are two points, just before and at it.
 * @param valueAt what holds at a moment, as chanceAt gives it for an item
 * @param practice moments of practice in any order; those outside the stretch are left out. All moments in one unit
 * @param perStretch points between two practices, at least 2
 * @param justBefore how long before a practice its "before" is looked up, in the same unit
 */
export function forgettingCurve(
  valueAt: (at: number) => number,
  {
    from,
    to,
    practice,
    perStretch = 24,
    justBefore = 1,
  }: {
    from: number;
    to: number;
    practice: readonly number[];
    perStretch?: number;
    justBefore?: number;
  },
): CurvePoint[] {
  const inside = [...new Set(practice)].filter((at) => at > from && at < to).sort((a, b) => a - b);
  const ends = [...inside, to];
  const points: CurvePoint[] = [];
  let start = from;
  for (const end of ends) {
    const last = end === to ? to : Math.max(start, end - justBefore);
    for (let i = 0; i < perStretch; i++) {
      const part = i / (perStretch - 1);
      const at = start + (last - start) * part ** 3;
      points.push({ at, value: valueAt(at) });
    }
    start = end;
  }
  return points;
}
