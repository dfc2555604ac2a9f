import type { Attempt } from '#lib/model/attempt.ts';
import type { Clip } from '#lib/model/clip.ts';
import type { Course } from '#lib/model/course.ts';
import type { Line, Question } from '#lib/model/item.ts';
import type { Lesson } from '#lib/model/lesson.ts';
import type { Source } from '#lib/model/source.ts';
import type { Statement, Topic } from '#lib/model/topic.ts';
import { readAll, readBy, readItemRows, readOne } from './read.ts';
import type { Db } from './schema.ts';

/** Everything that the deck holds of one course. */
export interface CourseDeck {
  course: Course;
  topics: Topic[];
  statements: Statement[];
  clips: Clip[];
  sources: Source[];
  questions: Question[];
  lines: Line[];
  lessons: Lesson[];
  attempts: Attempt[];
}

/** The same without the attempts. */
export type BriefDeck = Omit<CourseDeck, 'attempts'>;

/** Reads a course whole, its attempts included; see readBriefDeck. */
export async function readCourseDeck(db: Db, courseId: string): Promise<CourseDeck | undefined> {
  const [deck, attempts] = await Promise.all([
    readBriefDeck(db, courseId),
    readBy(db, 'attempts', 'course', courseId),
  ]);
  return deck && { ...deck, attempts };
}

/** Reads a course without its attempts: topics, statements and lines in their order, clips, questions and lessons oldest first; undefined when there is no such course. */
export async function readBriefDeck(db: Db, courseId: string): Promise<BriefDeck | undefined> {
  const [course, topics, statements, clips, sources, questions, lines, lessons] = await Promise.all([
    readOne(db, 'courses', courseId),
    readBy(db, 'topics', 'course', courseId),
    readBy(db, 'statements', 'course', courseId),
    readBy(db, 'clips', 'course', courseId),
    readAll(db, 'sources'),
    readItemRows(db, 'questions', courseId),
    readItemRows(db, 'lines', courseId),
    readBy(db, 'lessons', 'course', courseId),
  ]);
  if (!course) return undefined;
  const byOrder = (a: { order: number }, b: { order: number }) => a.order - b.order;
  const byAge = (a: { createdAt: number }, b: { createdAt: number }) => a.createdAt - b.createdAt;
  clips.sort(byAge);
  questions.sort(byAge);
  lessons.sort(byAge);
  topics.sort(byOrder);
  statements.sort(byOrder);
  lines.sort(byOrder);
  return { course, topics, statements, clips, sources, questions, lines, lessons };
}
