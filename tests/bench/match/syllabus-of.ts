import { NEW_TOPIC, type Statement, type Topic } from '#lib/model/topic.ts';
import { buildTopicIndex } from '#lib/syllabus/match/index.ts';
import type { TopicIndex } from '#lib/syllabus/match/index.ts';
import type { Draw, LabelledTopic } from './collection.ts';

const KEPT = { courseId: 'course', code: '', group: '', off: false, createdAt: 0, changedAt: 0 };

/** The index of a collection's topics with the tagged texts; a topic's id is its place. */
export function indexOf(topics: readonly LabelledTopic[], tagged: Draw['tagged']): TopicIndex {
  const rows = topics.map(({ title }, order): Topic => {
    const place = { parentId: null, order, share: null, unit: 'percent' as const, ...NEW_TOPIC };
    return { ...KEPT, ...place, id: String(order), title };
  });
  const statements = topics.flatMap(({ text }, order): Statement[] =>
    text ? [{ ...KEPT, id: `s${order}`, topicId: String(order), order: 0, text }] : [],
  );
  const passages = tagged.map(({ topic, text }) => ({ topicId: String(topic), text }));
  return buildTopicIndex({ topics: rows, statements, tagged: passages });
}
