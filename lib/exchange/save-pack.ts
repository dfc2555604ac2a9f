import type { Course } from '#lib/model/course.ts';
import type { Question } from '#lib/model/item.ts';
import type { Lesson } from '#lib/model/lesson.ts';
import type { Statement, Topic } from '#lib/model/topic.ts';
import { type TopicNode, keptTopics, topicTree } from '#lib/syllabus/tree.ts';
import type { z } from 'zod';
import {
  type CoursePack,
  PACK_FORMAT,
  PACK_VERSION,
  PackCourse,
  PackLesson,
  PackQuestion,
  PackStatement,
  PackTopic,
  unknownParts,
} from './course-pack.ts';

/** Topics as the tree has them: one whose parent is missing, or is below it, stands at the top. */
const underParents = (nodes: readonly TopicNode[], parentId: string | null = null): Topic[] =>
  nodes.flatMap(({ topic, children }) => [{ ...topic, parentId }, ...underParents(children, topic.id)]);

/** What of a deck goes into a course pack. */
export interface PackedRows {
  course: Course;
  topics: readonly Topic[];
  statements: readonly Statement[];
  questions: readonly Question[];
  lessons: readonly Lesson[];
}

/**
 * A course as a pack. Clips, note lines, attempts, and what of the lessons is held are the student's and stay out, and
 * so does everything under topics that were dropped. Parts of `before` that this version does not know are handed on.
 *
 * @param before the pack that the course came from or was saved as; null without one
 * @param savedAt epoch milliseconds
 */
export function packOf(rows: PackedRows, before: CoursePack | null, savedAt: number): CoursePack {
  const topics = underParents(topicTree(keptTopics(rows.topics)));
  const ids = new Set(topics.map(({ id }) => id));
  const inTopics = <T extends { topicId: string }>(all: readonly T[]): T[] =>
    all.filter(({ topicId }) => ids.has(topicId));
  const picked = <S extends z.ZodType>(schema: S, all: readonly unknown[]): z.infer<S>[] =>
    all.map((row) => schema.parse(row));
  return {
    format: PACK_FORMAT,
    version: PACK_VERSION,
    savedAt,
    course: PackCourse.parse(rows.course),
    topics: picked(PackTopic, topics),
    statements: picked(PackStatement, inTopics(rows.statements)),
    questions: picked(PackQuestion, inTopics(rows.questions)),
    lessons: picked(PackLesson, inTopics(rows.lessons)),
    ...(before ? unknownParts(before) : {}),
  };
}
