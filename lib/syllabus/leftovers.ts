import type { Clip } from '#lib/model/clip.ts';
import type { Lesson } from '#lib/model/lesson.ts';
import type { Line, Question } from '#lib/model/item.ts';
import type { Topic } from '#lib/model/topic.ts';

/** What still stands under a topic that a newer version of the syllabus has no longer. */
export interface Leftover {
  topic: Topic;
  clips: Clip[];
  questions: Question[];
  lines: Line[];
  lessons: Lesson[];
}

/** Dropped topics under which something stands, in reading order: it is kept, and waits to be moved. */
export function leftoversOf(deck: {
  topics: readonly Topic[];
  clips: readonly Clip[];
  questions: readonly Question[];
  lines: readonly Line[];
  lessons: readonly Lesson[];
}): Leftover[] {
  const leftovers = deck.topics
    .filter(({ dropped }) => dropped)
    .map((topic): Leftover => ({ topic, clips: [], questions: [], lines: [], lessons: [] }));
  const byTopic = new Map(leftovers.map((one) => [one.topic.id, one]));
  for (const clip of deck.clips) for (const id of clip.topicIds) byTopic.get(id)?.clips.push(clip);
  for (const question of deck.questions) byTopic.get(question.topicId)?.questions.push(question);
  for (const line of deck.lines) byTopic.get(line.topicId)?.lines.push(line);
  for (const lesson of deck.lessons) byTopic.get(lesson.topicId)?.lessons.push(lesson);
  return leftovers
    .filter(({ clips, questions, lines, lessons }) =>
      [clips, questions, lines, lessons].some((all) => all.length > 0),
    )
    .sort((a, b) => a.topic.order - b.topic.order);
}
