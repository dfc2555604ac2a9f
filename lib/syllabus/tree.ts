import type { Topic } from '#lib/model/topic.ts';

/** A topic with the topics directly below it, in reading order. */
export interface TopicNode {
  topic: Topic;
  children: TopicNode[];
}

type TopicsById = ReadonlyMap<string, Topic>;

/** Topics by their ids. */
export const byIdOf = (topics: readonly Topic[]): Map<string, Topic> => new Map(topics.map((t) => [t.id, t]));

/**
 * The topics as trees, siblings in reading order. A topic whose parent is missing, or which is its own ancestor,
 * stands at the top level, so that nothing is lost from view.
 */
export function topicTree(topics: readonly Topic[]): TopicNode[] {
  const byId = byIdOf(topics);
  const looped = loopedIn(byId);
  const nodes = new Map(topics.map((topic) => [topic.id, { topic, children: [] } as TopicNode]));
  const top: TopicNode[] = [];
  for (const node of [...nodes.values()].sort((a, b) => a.topic.order - b.topic.order)) {
    const parent = looped.has(node.topic.id) ? undefined : nodes.get(node.topic.parentId ?? '');
    (parent ? parent.children : top).push(node);
  }
  return top;
}

/**
 * The way down to a topic: its ancestors, the highest first, and the topic itself last. A missing parent or a circle
 * ends the way.
 */
export function pathOf(topic: Topic, byId: TopicsById): Topic[] {
  const path: Topic[] = [];
  const seen = new Set<string>();
  for (let at: Topic | undefined = topic; at && !seen.has(at.id); at = parentOf(at, byId)) {
    seen.add(at.id);
    path.push(at);
  }
  return path.reverse();
}

/** The topics that count: neither off themselves nor below a topic that is off. */
export const activeTopics = (topics: readonly Topic[]): Topic[] => withoutBranches(topics, ({ off }) => off);

/** The topics of the syllabus as it is now, switched off or not: neither dropped nor below one that is dropped. */
export const keptTopics = (topics: readonly Topic[]): Topic[] =>
  withoutBranches(topics, ({ dropped }) => dropped);

/** The topics in reading order, without those that are out and all below them. */
function withoutBranches(topics: readonly Topic[], isOut: (topic: Topic) => boolean): Topic[] {
  const left: Topic[] = [];
  const keep = ({ topic, children }: TopicNode): void => {
    if (isOut(topic)) return;
    left.push(topic);
    children.forEach(keep);
  };
  topicTree(topics).forEach(keep);
  return left;
}

/**
 * What part of the exam each leaf topic stands for, by topic id; the parts add up to 1 (or there are none). Only
 * topics that count are divided upon (see activeTopics). A topic's part goes to its children in proportion to their
 * `share`; a child without one weighs as much as the mean of its siblings that have one, and all weigh the same
 * where none has one or the given ones come to nothing.
 */
export function examShares(topics: readonly Topic[]): Map<string, number> {
  const shares = new Map<string, number>();
  const divide = (nodes: readonly TopicNode[], whole: number): void => {
    const weights = weightsOf(nodes.map((n) => n.topic.share));
    nodes.forEach((node, i) => {
      const part = whole * (weights[i] ?? 0);
      if (node.children.length > 0) divide(node.children, part);
      else shares.set(node.topic.id, part);
    });
  };
  divide(topicTree(activeTopics(topics)), 1);
  return shares;
}

/** Relative shares of siblings as parts of 1. */
function weightsOf(shares: readonly (number | null)[]): number[] {
  const given = shares.filter((s) => s !== null);
  const sum = given.reduce((total, s) => total + s, 0);
  const mean = sum > 0 ? sum / given.length : 1;
  const weights = shares.map((s) => (s === null || (sum === 0 && given.length === shares.length) ? mean : s));
  const total = weights.reduce((all, w) => all + w, 0);
  return weights.map((w) => w / total);
}

const parentOf = (topic: Topic, byId: TopicsById): Topic | undefined =>
  topic.parentId === null ? undefined : byId.get(topic.parentId);

/** Ids of the topics that are their own ancestors. Each topic is walked over once. */
function loopedIn(byId: TopicsById): Set<string> {
  const looped = new Set<string>();
  const done = new Set<string>();
  for (const topic of byId.values()) {
    const way: string[] = [];
    let at: Topic | undefined = topic;
    for (; at && !done.has(at.id); at = parentOf(at, byId)) {
      done.add(at.id);
      way.push(at.id);
    }
    const from = at ? way.indexOf(at.id) : -1;
    if (from >= 0) way.slice(from).forEach((id) => looped.add(id));
  }
  return looped;
}
