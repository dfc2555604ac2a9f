import type { Statement, Topic } from '#lib/model/topic.ts';
import type { OutlineDraftRow } from './outline-row.ts';
import { topicTree } from './tree.ts';
import type { TopicNode } from './tree.ts';

/** What a kept syllabus is made of. */
export interface Syllabus {
  topics: readonly Topic[];
  statements: readonly Statement[];
}

/**
 * The rows of a kept syllabus, in reading order, for editing it: the inverse of buildSyllabus. Topics that were
 * dropped, and all below them, stay out, and so does a statement whose topic is missing.
 */
export function rowsOf({ topics, statements }: Syllabus): OutlineDraftRow[] {
  const byTopic = Map.groupBy(statements, (statement) => statement.topicId);
  const rows: OutlineDraftRow[] = [];
  const addTopic = ({ topic, children }: TopicNode, depth: number): void => {
    if (topic.dropped) return;
    rows.push(topicRow(topic, depth));
    const inside = [
      ...(byTopic.get(topic.id) ?? []).map((s) => ({
        order: s.order,
        add: () => rows.push(statementRow(s, depth + 1)),
      })),
      ...children.map((node) => ({ order: node.topic.order, add: () => addTopic(node, depth + 1) })),
    ];
    for (const { add } of inside.sort((a, b) => a.order - b.order)) add();
  };
  for (const node of topicTree(topics)) addTopic(node, 0);
  return rows;
}

const topicRow = (topic: Topic, depth: number): OutlineDraftRow => ({
  kind: 'topic',
  depth,
  code: topic.code,
  text: topic.title,
  share: topic.share,
  ...(topic.share !== null && topic.unit !== 'parts' ? { unit: topic.unit } : {}),
  ...tierOf(topic),
  id: topic.id,
});

const statementRow = (statement: Statement, depth: number): OutlineDraftRow => ({
  kind: 'statement',
  depth,
  code: statement.code,
  text: statement.text,
  share: null,
  ...tierOf(statement),
  id: statement.id,
});

/** Left out where there is nothing to say, as in what is read. */
const tierOf = ({ group, off }: Topic | Statement): Pick<OutlineDraftRow, 'group' | 'off'> => ({
  ...(group ? { group } : {}),
  ...(off ? { off } : {}),
});
