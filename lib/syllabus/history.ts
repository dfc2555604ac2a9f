/** From a day on, an item is secured, or is no longer. */
export interface SecuredChange {
  /** ISO 8601 calendar day. */
  day: string;
  topicId: string;
  isSecured: boolean;
}

/** What a topic counts for. */
export interface Counted {
  topicId: string;
  share: number;
  /** How many things can be asked in it; see TopicCoverage. */
  asked: number;
}

/** The part of the exam that was secured at the end of a day, 0 to 1. */
export interface SecuredDay {
  day: string;
  secured: number;
}

/**
 * How the secured part of the exam grew, by the syllabus and the items of today: a point for each day on which
 * something changed. Changes of topics that do not count are passed over.
 * @param changes in any order; of each item those that alternate, beginning with one that secures it
 */
export function securedHistory(changes: readonly SecuredChange[], topics: readonly Counted[]): SecuredDay[] {
  const worth = new Map(topics.map(({ topicId, share, asked }) => [topicId, share / Math.max(1, asked)]));
  const steps = new Map<string, number>();
  for (const { day, topicId, isSecured } of changes) {
    const step = (worth.get(topicId) ?? 0) * (isSecured ? 1 : -1);
    steps.set(day, (steps.get(day) ?? 0) + step);
  }
  let secured = 0;
  return [...steps.keys()].sort().map((day) => {
    secured += steps.get(day)!;
    // Sums of shares may miss the ends by a rounding.
    return { day, secured: Math.min(1, Math.max(0, secured)) };
  });
}
