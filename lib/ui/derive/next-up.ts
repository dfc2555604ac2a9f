import { type Ranked, nextItems } from '#lib/recall/next-item.ts';
import { cacheNextUp } from '#lib/store/actions/attempts.ts';
import { type CourseDeck, readCourseDeck } from '#lib/store/course-deck.ts';
import type { Db } from '#lib/store/schema.ts';
import { type Progress, progressOf, rankDeck } from './progress.ts';

/** As many items as the longest round of quick answers asks. */
export const QUEUE_LENGTH = 60;

export interface Standing {
  deck: CourseDeck;
  progress: Progress;
  ranked: Ranked[];
}

/** Reads a course, works out where it stands, and keeps what gains most now for the popup's next opening. */
export async function readStanding(db: Db, courseId: string, now: number): Promise<Standing | undefined> {
  const deck = await readCourseDeck(db, courseId);
  if (!deck) return undefined;
  const progress = progressOf(deck, now);
  const ranked = rankDeck(deck, progress, now);
  const items = nextItems(ranked, QUEUE_LENGTH).map(({ item }) => ({ kind: item.kind, id: item.id }));
  await cacheNextUp(db, { courseId, at: now, items });
  return { deck, progress, ranked };
}
