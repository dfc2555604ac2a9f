import type { Topic } from '#lib/model/topic.ts';
import { activeTopics } from '#lib/syllabus/tree.ts';
import { headingKey, headingOf } from '../out/sections.ts';

/** Gives the topic for each heading of a file, from its top to its end; null where none is called so. */
export type FindTopic = (level: number, heading: string) => string | null;

/**
 * Finds topics by their headings: code and title, or the title alone where it is the only one. Of several that are
 * called the same, the one below the topic of the heading above goes first, then the next in reading order.
 */
export function topicFinder(topics: readonly Topic[]): FindTopic {
  const active = activeTopics(topics);
  const place = new Map(active.map(({ id }, i) => [id, i]));
  const byName = Map.groupBy(active, (topic) => headingKey(headingOf(topic)));
  const byTitle = Map.groupBy(active, ({ title }) => headingKey(headingOf({ code: '', title })));
  const used = new Set<string>();
  /** The headings that the present one stands below, with their topics. */
  let above: { level: number; id: string }[] = [];
  let last = -1;
  return (level, heading) => {
    above = above.filter((one) => one.level < level);
    const named = byName.get(headingKey(heading)) ?? [];
    const titled = byTitle.get(headingKey(heading)) ?? [];
    const found = named.length > 0 ? named : titled.length === 1 ? titled : [];
    const left = found.filter(({ id }) => !used.has(id));
    const parentId = above.at(-1)?.id ?? null;
    const below = left.find((topic) => topic.parentId === parentId);
    const next = left.find(({ id }) => place.get(id)! > last);
    // A heading that comes again leads where it led before.
    const topic = below ?? next ?? left[0] ?? found[0];
    if (!topic) return null;
    used.add(topic.id);
    last = place.get(topic.id)!;
    above.push({ level, id: topic.id });
    return topic.id;
  };
}
