import { SAVINGS } from '#tests/data/ebbinghaus.ts';
import { describe, expect, it } from 'vitest';
import { forgettingCurve } from '#lib/recall/forgetting-curve.ts';

const savings = (minutes: number): number =>
  (100 * SAVINGS.k) / (Math.log10(minutes) ** SAVINGS.c + SAVINGS.k);

describe("Ebbinghaus's printed table", () => {
  const points = forgettingCurve(savings, { from: 1, to: 44_640, practice: [], perStretch: 200 });

  // Read off the drawn curve, straight from point to point: so the points must lie close enough where it is steep.
  it.each(SAVINGS.rows)('at $minutes min', ({ minutes, computed }) => {
    const after = points.findIndex((point) => point.at >= minutes);
    const [left, right] = [points[after - 1]!, points[after]!];
    const part = (minutes - left.at) / (right.at - left.at);
    expect(Math.abs(left.value + part * (right.value - left.value) - computed)).toBeLessThan(0.15);
    expect(Math.abs(savings(minutes) - computed)).toBeLessThan(0.1);
  });
});

describe('the points of a curve', () => {
  const sinceLast = (at: number) => (at < 40 ? at : at - 40);

  it('run from end to end in order, with a step at each practice', () => {
    const points = forgettingCurve(sinceLast, {
      from: 0,
      to: 100,
      practice: [40, -5, 200, 40],
      perStretch: 5,
    });
    expect(points).toHaveLength(10);
    expect(points[0]).toEqual({ at: 0, value: 0 });
    expect(points[4]).toEqual({ at: 39, value: 39 });
    expect(points[5]).toEqual({ at: 40, value: 0 });
    expect(points.at(-1)).toEqual({ at: 100, value: 60 });
    expect(points.every((point, i) => i === 0 || point.at >= points[i - 1]!.at)).toBe(true);
  });

  it('lie closer just after practice than later', () => {
    const [one, two, , four, five] = forgettingCurve(sinceLast, {
      from: 0,
      to: 100,
      practice: [],
      perStretch: 5,
    });
    expect(two!.at - one!.at).toBeLessThan(five!.at - four!.at);
  });
});
