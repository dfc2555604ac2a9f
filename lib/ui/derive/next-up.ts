import type { Attempt } from '#lib/model/attempt.ts';
import { type Ranked, nextItems } from '#lib/recall/next-item.ts';
import { cacheNextUp } from '#lib/store/actions/attempts.ts';
import { type CourseDeck, readCourseDeck } from '#lib/store/course-deck.ts';
import type { Db } from '#lib/store/schema.ts';
import { type Progress, progressAfter, progressOf, rankDeck, rankedAfter } from './progress.ts';
import { reasonOf } from './why.ts';

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
  const items = nextItems(ranked, QUEUE_LENGTH).map((one) => ({
    kind: one.item.kind,
    id: one.item.id,
    reason: reasonOf(one, now),
  }));
  await cacheNextUp(db, { courseId, at: now, items });
  return { deck, progress, ranked };
}

/**
 * The standing after one more attempt, without reading anything: its item's memory is new, and so is its place in the
 * order; all others keep theirs, though a little time has passed. Null where the attempt is dated before another one
 * (a clock that was set back, attempts that were brought in): then everything has to be worked out again.
 */
export function standingAfter(standing: Standing, attempt: Attempt, now: number): Standing | null {
  if (attempt.courseId !== standing.deck.course.id || standing.progress.counted.has(attempt.id))
    return standing;
  const progress = progressAfter(standing.deck, standing.progress, attempt, now);
  if (!progress) return null;
  const deck = { ...standing.deck, attempts: [...standing.deck.attempts, attempt] };
  return { deck, progress, ranked: rankedAfter(standing.ranked, { deck, progress }, attempt.itemId, now) };
}
