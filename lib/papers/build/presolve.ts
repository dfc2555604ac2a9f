import { HUNDREDTHS } from './topic-marks.ts';
import type { Pool, Unit } from './units.ts';

/**
 * Leaves out units that some best paper does without, for what `valueOf` is to be as high as possible.
 *
 * Units of one profile, such as the same marks in every topic, differ only in minutes and value, and a paper holds at most
 * k of them. Where k others take no longer, are worth no less and have no near copy,
 * at least one of those is missing in any paper with this unit, and can stand in its place. Such exchanges come to an
 * end: they always go up in one fixed order.
 * @param mostOf how many units of this profile a paper can hold: see `mostByMarks` and `mostByTopics`
 * @param profileOf what units must have in common to stand for each other, their marks at least
 * @returns places in `pool.units`
 */
export function worthKeeping(
  pool: Pool,
  units: readonly number[],
  mostOf: (unit: Unit) => number,
  valueOf: (unit: Unit) => number,
  profileOf: (unit: Unit) => string = marksByTopic,
): number[] {
  const copied = new Set(pool.alike.flat());
  const profiles = new Map<string, number[]>();
  for (const place of units) {
    const unit = pool.units[place]!;
    if (mostOf(unit) < 1) continue;
    const key = profileOf(unit);
    profiles.set(key, [...(profiles.get(key) ?? []), place]);
  }
  const kept: number[] = [];
  for (const profile of profiles.values()) {
    const sorted = profile
      .map((place) => ({ place, minutes: pool.units[place]!.minutes, value: valueOf(pool.units[place]!) }))
      .sort((a, b) => b.value - a.value || a.minutes - b.minutes || a.place - b.place);
    const most = mostOf(pool.units[profile[0]!]!);
    sorted.forEach(({ place, minutes }, at) => {
      let better = 0;
      for (let i = 0; i < at && better < most; i++)
        if (sorted[i]!.minutes <= minutes && !copied.has(sorted[i]!.place)) better++;
      if (better < most) kept.push(place);
    });
  }
  return kept.sort((a, b) => a - b);
}

/** How many units of as many marks a paper of at most `marks` marks can hold. */
export const mostByMarks =
  (marks: number) =>
  (unit: Unit): number =>
    Math.floor(marks / unit.marks);

/** How many with the same marks by topic, where moreover no topic may be more than `off` marks above its target. */
export const mostByTopics =
  ({ targets }: Pool, marks: number, off: number) =>
  (unit: Unit): number =>
    [...unit.topics].reduce((most, [topic, hundredths]) => {
      const room = (targets.get(topic) ?? 0) + off * HUNDREDTHS;
      return hundredths > 0 ? Math.min(most, Math.floor(room / hundredths + 1e-6)) : most;
    }, mostByMarks(marks)(unit));

const marksByTopic = ({ topics }: Unit): string =>
  [...topics]
    .map((each) => each.join(' '))
    .sort()
    .join('\n');
