import { Course } from '#lib/model/course.ts';
import { NextUp, type Upcoming } from '#lib/model/next-up.ts';
import { FIRST_SETTINGS, SETTINGS_KEY, Settings } from '#lib/model/settings.ts';
import { Topic } from '#lib/model/topic.ts';
import { itemsBy } from './items-now.ts';
import type { Db } from './schema.ts';

/** What the popup has before it has read the deck: enough to begin a round. */
export interface FirstUp {
  settings: Settings;
  course: Course | null;
  /** What gains most, best first with topics mixed, as it was worked out at `at`. Empty without a cache. */
  queue: Upcoming[];
  /** The topics that the queue's items stand under. */
  topics: Topic[];
  /** Epoch ms: attempts made since are not counted in, though what was asked since is left out. */
  at: number;
}

/**
 * Reads in one transaction, by key alone, what the popup opens on. Rows that cannot be read count as missing here;
 * the full reading afterwards sets them aside.
 */
export async function readFirstUp(db: Db): Promise<FirstUp> {
  const transaction = db.transaction(['settings', 'courses', 'nextUp', 'questions', 'lines', 'topics']);
  const settings =
    Settings.safeParse(await transaction.objectStore('settings').get(SETTINGS_KEY)).data ?? FIRST_SETTINGS;
  const none: FirstUp = { settings, course: null, queue: [], topics: [], at: 0 };
  if (settings.courseId === null) return none;
  const [courseRow, nextRow] = await Promise.all([
    transaction.objectStore('courses').get(settings.courseId),
    transaction.objectStore('nextUp').get(settings.courseId),
  ]);
  const course = Course.safeParse(courseRow).data ?? null;
  const next = NextUp.safeParse(nextRow).data;
  if (!course || !next) return { ...none, course };
  const items = await itemsBy((store, id) => transaction.objectStore(store).get(id), next.items);
  const queue = next.items.flatMap(({ id, reason }) => {
    const item = items.get(id);
    return item ? [{ item, reason }] : [];
  });
  const topicIds = [...new Set(queue.map(({ item }) => item.topicId))];
  const rows = await Promise.all(topicIds.map((id) => transaction.objectStore('topics').get(id)));
  const topics = rows.flatMap((row) => Topic.safeParse(row).data ?? []);
  return { settings, course, queue, topics, at: next.at };
}
