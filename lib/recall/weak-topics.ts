import type { Id } from '#lib/model/basics.ts';
import type { Ranked } from './next-item.ts';

/** What is to be expected of a topic's items on exam day. */
export interface TopicOutlook {
  topicId: Id;
  /** Part of their marks, 0 to 1. */
  part: number;
}

/** The part of its items' marks that each topic is expected to bring, the weakest first, and that of all items. */
export function topicOutlooks(ranked: readonly Ranked[]): { topics: TopicOutlook[]; all: number } {
  const byTopic = Map.groupBy(ranked, ({ item }) => item.topicId);
  const topics = [...byTopic].map(([topicId, ones]) => ({ topicId, part: partOf(ones) }));
  return { topics: topics.sort((a, b) => a.part - b.part), all: partOf(ranked) };
}

/** Topics expected to bring a smaller part of their marks than all items together; the weakest first. */
export function weakTopics(ranked: readonly Ranked[]): TopicOutlook[] {
  const { topics, all } = topicOutlooks(ranked);
  // Rounding errors make no topic weak.
  return topics.filter(({ part }) => part < all - 1e-9);
}

function partOf(ranked: readonly Ranked[]): number {
  let got = 0;
  let outOf = 0;
  for (const { item, chanceExamNow } of ranked) {
    got += chanceExamNow * item.marks;
    outOf += item.marks;
  }
  return outOf === 0 ? 0 : got / outOf;
}
