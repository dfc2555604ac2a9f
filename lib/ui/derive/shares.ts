import type { Topic } from '#lib/model/topic.ts';

/**
 * Exam shares for every topic that an item may stand under: a leaf has its own; a topic with topics below it counts
 * as an average one of the leaves below it. Topics that are off have none.
 */
export function sharesForItems(
  topics: Topic[],
  leafShares: ReadonlyMap<string, number>,
): Map<string, number> {
  const byId = new Map(topics.map((topic) => [topic.id, topic]));
  const below = new Map<string, number[]>();
  for (const [id, share] of leafShares) {
    const seen = new Set<string>();
    for (let topic = byId.get(id); topic && !seen.has(topic.id); topic = byId.get(topic.parentId ?? '')) {
      seen.add(topic.id);
      below.set(topic.id, [...(below.get(topic.id) ?? []), share]);
    }
  }
  const mean = (shares: number[]) => shares.reduce((sum, share) => sum + share, 0) / shares.length;
  return new Map([...below].map(([id, shares]) => [id, mean(shares)]));
}
