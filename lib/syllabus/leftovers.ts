import type { Clip } from '#lib/model/clip.ts';
import type { Line, Question } from '#lib/model/item.ts';
import type { Topic } from '#lib/model/topic.ts';

/** What still stands under a topic that a newer version of the syllabus has no longer. */
export interface Leftover {
  topic: Topic;
  clips: Clip[];
  questions: Question[];
  lines: Line[];
}

/** Dropped topics under which something stands, in reading order: it is kept, and waits to be moved. */
export function leftoversOf(deck: {
  topics: readonly Topic[];
  clips: readonly Clip[];
  questions: readonly Question[];
  lines: readonly Line[];
}): Leftover[] {
  const leftovers = deck.topics
    .filter(({ dropped }) => dropped)
    .map((topic): Leftover => ({ topic, clips: [], questions: [], lines: [] }));
  const byTopic = new Map(leftovers.map((one) => [one.topic.id, one]));
  for (const clip of deck.clips) for (const id of clip.topicIds) byTopic.get(id)?.clips.push(clip);
  for (const question of deck.questions) byTopic.get(question.topicId)?.questions.push(question);
  for (const line of deck.lines) byTopic.get(line.topicId)?.lines.push(line);
  return leftovers
    .filter(({ clips, questions, lines }) => clips.length + questions.length + lines.length > 0)
    .sort((a, b) => a.topic.order - b.topic.order);
}
