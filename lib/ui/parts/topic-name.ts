import type { Topic } from '#lib/model/topic.ts';
import { t } from '../text.ts';

/** A topic's code and title, as students read it. */
export const topicName = (topic: Pick<Topic, 'code' | 'title'>): string =>
  `${topic.code} ${topic.title}`.trim();

/** Looks names up by id; a topic that is gone says so. */
export function topicNames(topics: Iterable<Topic>): (id: string) => string {
  const names = new Map([...topics].map((topic) => [topic.id, topicName(topic)]));
  return (id) => names.get(id) ?? t('topicGone');
}
