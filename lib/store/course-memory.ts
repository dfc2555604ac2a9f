import type { Attempt } from '#lib/model/attempt.ts';
import { MemoryCache } from '#lib/model/memory-cache.ts';
import {
  addNewer,
  courseMemoryOf,
  type CourseMemory,
  fitsDeck,
  type WrittenAt,
} from '#lib/recall/course-memory.ts';
import { isPacked, type PackedMemories, packMemories, unpackMemories } from '#lib/recall/packed-memory.ts';
import { readAttempts, readable } from './read.ts';
import type { Db } from './schema.ts';
import { inSlices } from './slices.ts';

/** With more attempts than this to be added it is as quick to begin anew. */
const MOST_NEWER = 5000;

/** The cache is written anew when more attempts than this have come to it: it is large. */
export const KEPT_AFTER = 300;

/** What is kept of a course, and the attempts dated after the latest that is in it, oldest first. */
export interface Kept {
  packed: PackedMemories;
  newer: Attempt[];
}

/**
 * Reads what is kept. Null where there is nothing that fits: attempts are never changed, so all is in it that came
 * before where the numbers add up. One that came since and is dated at that very moment, or before, makes them differ.
 */
export async function readKept(db: Db, courseId: string): Promise<Kept | null> {
  const transaction = db.transaction(['memories', 'attempts']);
  const row = MemoryCache.safeParse(await transaction.objectStore('memories').get(courseId));
  if (!row.success || !isPacked(row.data.packed)) return null;
  const { packed } = row.data;
  const latest = packed.moments.at(-1) ?? -Infinity;
  const attempts = transaction.objectStore('attempts');
  const newerThan = IDBKeyRange.bound([courseId, latest], [courseId, Infinity], true);
  const added = await attempts.index('courseAt').count(newerThan);
  const known = packed.moments.length + added;
  // All are counted several times as quickly as those of a course, and most decks hold one course.
  const isAll =
    known === (await attempts.count()) || known === (await attempts.index('course').count(courseId));
  if (!isAll || added > MOST_NEWER) return null;
  const newer = await attempts.index('courseAt').getAll(newerThan);
  const read = await readable(db, 'attempts', newer);
  return read.length === newer.length ? { packed, newer: read } : null;
}

/**
 * The memory of a course, from what is kept of it and the attempts made since, or from all attempts where that does not
 * fit; kept anew, in the background, where it pays.
 *
 * What is kept never holds attempts dated after the moment at which it was made: under a clock that was set back they
 * stay the latest for long, and all that is tried meanwhile comes before them.
 * @param now epoch ms
 */
export async function courseMemory(
  db: Db,
  courseId: string,
  { kept, writtenAt, now }: { kept: Kept | null; writtenAt: WrittenAt; now: number },
): Promise<CourseMemory> {
  const course = kept && (await fromKept(db, courseId, { kept, writtenAt, now }));
  return course ?? fromAttempts(db, courseId, writtenAt, now);
}

async function fromKept(
  db: Db,
  courseId: string,
  { kept, writtenAt, now }: { kept: Kept; writtenAt: WrittenAt; now: number },
): Promise<CourseMemory | null> {
  const course = await inSlices(unpackMemories(kept.packed));
  if (!fitsDeck(course, writtenAt)) return null;
  const past = kept.newer.filter(({ at }) => at <= now);
  if (!(await inSlices(addNewer(course, past, writtenAt)))) return null;
  if (past.length > KEPT_AFTER) await keepMemories(db, courseId, course);
  return (await inSlices(addNewer(course, kept.newer.slice(past.length), writtenAt))) ? course : null;
}

async function fromAttempts(
  db: Db,
  courseId: string,
  writtenAt: WrittenAt,
  now: number,
): Promise<CourseMemory> {
  const attempts = await readAttempts(db, courseId);
  const past = attempts.filter(({ at }) => at <= now);
  const course = await inSlices(courseMemoryOf(past, writtenAt));
  await keepMemories(db, courseId, course);
  if (past.length === attempts.length) return course;
  return inSlices(courseMemoryOf(attempts, writtenAt));
}

/** Packs it, and keeps it behind the page's back. A cache need not survive a power cut, and nobody has to be told of it. */
async function keepMemories(db: Db, courseId: string, course: CourseMemory): Promise<void> {
  const row: MemoryCache = { courseId, packed: await inSlices(packMemories(course)) };
  void put(db, row);
}

async function put(db: Db, row: MemoryCache): Promise<void> {
  try {
    const transaction = db.transaction('memories', 'readwrite', { durability: 'relaxed' });
    await Promise.all([transaction.store.put(row), transaction.done]);
  } catch {
    // No room for it, or the window is closing: the next opening takes as long as this one.
  }
}
