import { type HierarchyRectangularNode, hierarchy, treemap } from 'd3-hierarchy';
import type { Topic } from '#lib/model/topic.ts';
import type { TopicCoverage } from '#lib/syllabus/coverage.ts';
import { type TopicNode, topicTree } from '#lib/syllabus/tree.ts';

/** A rectangle of the map, in CSS pixels. */
export interface Place {
  left: number;
  top: number;
  width: number;
  height: number;
}

/** A leaf topic: its area is its share of the exam. */
export interface Tile extends Place {
  row: TopicCoverage;
  topic: Topic;
}

/** A topic of the top level that has others below it, with its name along its upper edge. */
export interface Group extends Place {
  topic: Topic;
}

/** How high the line with a group's name is. */
export const GROUP_LINE = 20;

interface Branch {
  topic: Topic | null;
  row?: TopicCoverage | undefined;
  children: Branch[];
}

/** Lays out the leaf topics that count as a treemap (squarified, by d3-hierarchy), in reading order. */
export function mapOf(
  topics: readonly Topic[],
  rows: readonly TopicCoverage[],
  { width, height }: { width: number; height: number },
): { tiles: Tile[]; groups: Group[] } {
  const byTopic = new Map(rows.map((row) => [row.topicId, row]));
  const branch = ({ topic, children }: TopicNode): Branch => ({
    topic,
    row: byTopic.get(topic.id),
    children: children.map(branch),
  });
  const root = hierarchy<Branch>({ topic: null, children: topicTree(topics).map(branch) })
    // A syllabus may give a topic no share at all: it stays to be seen.
    .sum(({ row }) => (row ? Math.max(row.share, 1e-4) : 0));
  const laid = treemap<Branch>()
    .size([width, height])
    .paddingInner(2)
    .paddingTop((node) => (node.depth === 1 && node.children ? GROUP_LINE : 0))
    .round(true)(root);
  const tiles = laid
    .leaves()
    .flatMap((node) =>
      node.data.row ? [{ ...placeOf(node), row: node.data.row, topic: node.data.topic! }] : [],
    );
  const groups = (laid.children ?? []).flatMap((node) =>
    node.children && node.value ? [{ ...placeOf(node), topic: node.data.topic! }] : [],
  );
  return { tiles, groups };
}

const placeOf = ({ x0, x1, y0, y1 }: HierarchyRectangularNode<Branch>): Place => ({
  left: x0,
  top: y0,
  width: x1 - x0,
  height: y1 - y0,
});

/** How much is secured, in steps that a pattern can show: 0 nothing, 1 to 3 some, 4 all. */
export function levelOf(securedPart: number): number {
  if (securedPart <= 0) return 0;
  return securedPart >= 1 ? 4 : 1 + Math.min(2, Math.floor(3 * securedPart));
}
