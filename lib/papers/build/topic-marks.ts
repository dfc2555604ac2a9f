import type { PartOffer, PaperWish } from './offer.ts';

/** Marks by topic are counted in whole hundredths, so that sums are exact. */
export const HUNDREDTHS = 100;

/** What is of no topic. */
export const NO_TOPIC = '';

/**
 * Hundredths of a mark that each topic should have: whole marks in proportion to the shares, by largest remainders
 * (Hamilton's method), as the marks of a real paper are whole.
 */
export function targetsOf({ marks, shares }: PaperWish): Map<string, number> {
  const whole = apportion(Object.entries(shares), marks);
  return new Map([...whole].map(([topic, each]) => [topic, each * HUNDREDTHS]));
}

/** Hundredths of a part's marks by topic; what its topics leave over is of `NO_TOPIC`. They add up to its marks. */
export function topicMarks({ topics, marks }: PartOffer): Map<string, number> {
  const weights = Object.entries(topics).filter(([, weight]) => weight > 0);
  const sum = weights.reduce((all, [, weight]) => all + weight, 0);
  if (sum < 1 - 1e-9) weights.push([NO_TOPIC, 1 - sum]);
  return apportion(weights, marks * HUNDREDTHS);
}

/** Whole numbers that add up to `total`, in proportion to weights; equal remainders go to the earlier. */
function apportion(weights: readonly (readonly [string, number])[], total: number): Map<string, number> {
  const sum = weights.reduce((all, [, weight]) => all + weight, 0);
  const exact = weights.map(([topic, weight]) => ({ topic, quota: sum > 0 ? (weight / sum) * total : 0 }));
  const whole = new Map(exact.map(({ topic, quota }) => [topic, Math.floor(quota + 1e-9)]));
  let left = sum > 0 ? total - [...whole.values()].reduce((all, each) => all + each, 0) : 0;
  const byRemainder = exact.toSorted(
    (a, b) => b.quota - whole.get(b.topic)! - (a.quota - whole.get(a.topic)!),
  );
  for (const { topic } of byRemainder) {
    if (left <= 0) break;
    whole.set(topic, whole.get(topic)! + 1);
    left--;
  }
  return whole;
}
