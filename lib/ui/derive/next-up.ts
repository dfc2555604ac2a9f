import type { Attempt } from '#lib/model/attempt.ts';
import { type Ranked, nextItems } from '#lib/recall/next-item.ts';
import { cacheNextUp } from '#lib/store/actions/attempts.ts';
import { type BriefDeck, type CourseDeck, readBriefDeck, readCourseDeck } from '#lib/store/course-deck.ts';
import { courseMemory, readKept } from '#lib/store/course-memory.ts';
import type { Db } from '#lib/store/schema.ts';
import { inSlices } from '#lib/store/slices.ts';
import {
  type BriefProgress,
  briefProgressOf,
  type Progress,
  progressAfter,
  progressOf,
  rankDeck,
  rankedAfter,
  rankSteps,
  writtenIn,
} from './progress.ts';
import { reasonOf } from './why.ts';

/** As many items as the longest round of quick answers asks. */
export const QUEUE_LENGTH = 60;

/** Where a course stands, without the attempts themselves: all that a round and the popup need. */
export interface BriefStanding {
  deck: BriefDeck;
  progress: BriefProgress;
  ranked: Ranked[];
}

export interface Standing extends BriefStanding {
  deck: CourseDeck;
  progress: Progress;
}

/**
 * Reads a course without its attempts, works out where it stands from what is kept of their memory, and keeps what
 * gains most now for the popup's next opening.
 */
export async function readBriefStanding(
  db: Db,
  courseId: string,
  now: number,
): Promise<BriefStanding | undefined> {
  // Counting attempts takes the database long: it does so while the rows are checked.
  const [deck, kept] = await Promise.all([readBriefDeck(db, courseId), readKept(db, courseId)]);
  if (!deck) return undefined;
  const course = await courseMemory(db, courseId, { kept, writtenAt: writtenIn(deck), now });
  const progress = await inSlices(briefProgressOf(deck, course, now));
  const ranked = await inSlices(rankSteps(deck, progress, now));
  await keepNextUp(db, courseId, ranked, now);
  return { deck, progress, ranked };
}

/** Reads a course, works out where it stands, and keeps what gains most now for the popup's next opening. */
export async function readStanding(db: Db, courseId: string, now: number): Promise<Standing | undefined> {
  const deck = await readCourseDeck(db, courseId);
  if (!deck) return undefined;
  const progress = progressOf(deck, now);
  const ranked = rankDeck(deck, progress, now);
  await keepNextUp(db, courseId, ranked, now);
  return { deck, progress, ranked };
}

async function keepNextUp(db: Db, courseId: string, ranked: readonly Ranked[], now: number): Promise<void> {
  const items = nextItems(ranked, QUEUE_LENGTH).map((one) => ({
    kind: one.item.kind,
    id: one.item.id,
    reason: reasonOf(one, now),
  }));
  await cacheNextUp(db, { courseId, at: now, items });
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
