import { Course } from '#lib/model/course.ts';
import { type Item, Line, Question, itemOfLine, itemOfQuestion } from '#lib/model/item.ts';
import { NextUp } from '#lib/model/next-up.ts';
import { FIRST_SETTINGS, SETTINGS_KEY, Settings } from '#lib/model/settings.ts';
import { Topic } from '#lib/model/topic.ts';
import type { Db } from './schema.ts';

/** What the popup shows before it has read the deck. */
export interface FirstUp {
  settings: Settings;
  course: Course | null;
  /** The item that gained most when the cache was made; null without a cache. */
  item: Item | null;
  topic: Topic | null;
}

/**
 * Reads in one transaction, by key alone, what the popup opens on. Rows that cannot be read count as missing here;
 * the full reading afterwards sets them aside.
 */
export async function readFirstUp(db: Db): Promise<FirstUp> {
  const transaction = db.transaction(['settings', 'courses', 'nextUp', 'questions', 'lines', 'topics']);
  const settings =
    Settings.safeParse(await transaction.objectStore('settings').get(SETTINGS_KEY)).data ?? FIRST_SETTINGS;
  const none: FirstUp = { settings, course: null, item: null, topic: null };
  if (settings.courseId === null) return none;
  const [courseRow, nextRow] = await Promise.all([
    transaction.objectStore('courses').get(settings.courseId),
    transaction.objectStore('nextUp').get(settings.courseId),
  ]);
  const course = Course.safeParse(courseRow).data ?? null;
  const next = NextUp.safeParse(nextRow).data?.items[0];
  if (!course || !next) return { ...none, course };
  const item =
    next.kind === 'question'
      ? Question.transform(itemOfQuestion).safeParse(await transaction.objectStore('questions').get(next.id))
          .data
      : Line.transform(itemOfLine).safeParse(await transaction.objectStore('lines').get(next.id)).data;
  if (!item) return { ...none, course };
  const topic = Topic.safeParse(await transaction.objectStore('topics').get(item.topicId)).data ?? null;
  return { settings, course, item, topic };
}
