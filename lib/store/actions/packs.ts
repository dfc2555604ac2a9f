import { Attempt } from '#lib/model/attempt.ts';
import { Course } from '#lib/model/course.ts';
import { Question } from '#lib/model/item.ts';
import { KeptPack } from '#lib/model/kept-pack.ts';
import { Lesson } from '#lib/model/lesson.ts';
import { FIRST_SETTINGS, SETTINGS_KEY, Settings } from '#lib/model/settings.ts';
import { StudentError } from '#lib/model/student-error.ts';
import { Statement, Topic } from '#lib/model/topic.ts';
import { CoursePack } from '#lib/exchange/course-pack.ts';
import { type MergedPack, type PackedDeck, mergePack } from '#lib/exchange/merge-pack.ts';
import { type PackIds, matchPack, withIds } from '#lib/exchange/place-pack.ts';
import { packOf } from '#lib/exchange/save-pack.ts';
import { type CourseDeck, readCourseDeck } from '../course-deck.ts';
import { readAll, readOne } from '../read.ts';
import type { Db } from '../schema.ts';
import { type WriteTransaction, checked, write } from '../write.ts';

/** A pack, and how it belongs to the deck. */
export interface PlacedPack {
  /** In the ids of the deck. */
  pack: CoursePack;
  /** See KeptPack. */
  packCourseId: string;
  ids: PackIds;
}

/** What taking a pack in would do. */
export interface PackLook extends PlacedPack {
  merged: MergedPack;
  /** The course as it is now; null where the pack brings a new one. */
  deck: CourseDeck | null;
  /** It was saved before the one that was taken in last. */
  isOlder: boolean;
}

/**
 * Looks at what taking a pack in would change; writes nothing.
 *
 * @param at epoch milliseconds
 * @param into a course that was begun without the pack, to take it into; null for the course that the pack belongs to,
 *   which is a new one where there is none yet
 */
export async function lookAtPack(
  db: Db,
  file: CoursePack,
  at: number,
  into: string | null = null,
): Promise<PackLook> {
  const placed = await placePack(db, file, into);
  const { pack } = placed;
  const [deck, kept] = await Promise.all([
    readCourseDeck(db, pack.course.id),
    readOne(db, 'packs', pack.course.id),
  ]);
  const last = lastPack(kept);
  const attempted = new Set(deck?.attempts.map(({ itemId }) => itemId));
  const merged = mergePack(deck ? { ...deck, attempted } : null, last, pack, at);
  return { ...placed, merged, deck: deck ?? null, isOlder: last !== null && pack.savedAt < last.savedAt };
}

/** A course that follows the pack already is known by that. */
async function placePack(db: Db, file: CoursePack, into: string | null): Promise<PlacedPack> {
  const packCourseId = file.course.id;
  const followed = (await readAll(db, 'packs')).find((one) => one.packCourseId === packCourseId);
  const deck = followed || into === null ? undefined : await readCourseDeck(db, into);
  const ids = followed?.ids ?? (deck ? matchPack(deck, file) : {});
  return { pack: withIds(file, ids), packCourseId, ids };
}

/** A course as a pack, to be handed on. What the pack it came from holds besides goes along. `at` in epoch milliseconds. */
export async function packOfCourse(db: Db, courseId: string, at: number): Promise<CoursePack> {
  const [deck, kept] = await Promise.all([readCourseDeck(db, courseId), readOne(db, 'packs', courseId)]);
  if (!deck) throw new StudentError('errorCourseGone');
  return packOf(deck, lastPack(kept), at);
}

const STORES = [
  'courses',
  'topics',
  'statements',
  'questions',
  'lessons',
  'attempts',
  'packs',
  'settings',
  'setAside',
  'nextUp',
] as const;
type Transaction = WriteTransaction<(typeof STORES)[number]>;

/**
 * Takes a pack in as a whole and makes its course the current one. What goes out of the course can be put back, apart
 * from statements, which are the syllabus's.
 * Errors: StudentError `errorPackForeign` where an id of the pack belongs to another course of the deck.
 *
 * @param at epoch milliseconds
 */
export async function takePack(db: Db, { pack, packCourseId, ids }: PlacedPack, at: number): Promise<void> {
  await write(db, [...STORES], async (transaction) => {
    const courseId = pack.course.id;
    const deck = await deckIn(transaction, courseId);
    const kept = KeptPack.safeParse(await transaction.objectStore('packs').get(courseId)).data;
    const { course, put, remove } = mergePack(deck, lastPack(kept), pack, at);
    await transaction.objectStore('courses').put(checked('courses', course));
    for (const store of ['topics', 'statements', 'questions', 'lessons'] as const)
      for (const row of put[store]) await putOwn(transaction, store, row);
    for (const { id } of remove.statements) await transaction.objectStore('statements').delete(id);
    for (const store of ['questions', 'lessons'] as const)
      for (const row of remove[store]) {
        await transaction.objectStore('setAside').add({ store, row, why: 'deleted', problem: '', at });
        await transaction.objectStore(store).delete(row.id);
      }
    await transaction.objectStore('packs').put(checked('packs', { courseId, at, packCourseId, ids, pack }));
    await transaction.objectStore('nextUp').delete(courseId);
    await makeCurrent(transaction, courseId);
  });
}

const lastPack = (kept: KeptPack | undefined): CoursePack | null =>
  CoursePack.safeParse(kept?.pack).data ?? null;

async function deckIn(transaction: Transaction, courseId: string): Promise<PackedDeck | null> {
  const course = Course.safeParse(await transaction.objectStore('courses').get(courseId)).data;
  if (!course) return null;
  const rows = async <T>(
    store: 'topics' | 'statements' | 'questions' | 'lessons' | 'attempts',
    schema: { safeParse(row: unknown): { data?: T | undefined } },
  ): Promise<T[]> => {
    const all: unknown[] = await transaction.objectStore(store).index('course').getAll(courseId);
    // What cannot be read is left for the reading that sets it aside.
    return all.flatMap((row) => schema.safeParse(row).data ?? []);
  };
  const attempts = await rows('attempts', Attempt);
  return {
    course,
    topics: await rows('topics', Topic),
    statements: await rows('statements', Statement),
    questions: await rows('questions', Question),
    lessons: await rows('lessons', Lesson),
    attempted: new Set(attempts.map(({ itemId }) => itemId)),
  };
}

async function putOwn<S extends 'topics' | 'statements' | 'questions' | 'lessons'>(
  transaction: Transaction,
  store: S,
  row: MergedPack['put'][S][number],
): Promise<void> {
  const there = await transaction.objectStore(store).get(row.id);
  if (there && there.courseId !== row.courseId) throw new StudentError('errorPackForeign');
  await transaction.objectStore(store).put(checked(store, row as never));
}

async function makeCurrent(transaction: Transaction, courseId: string): Promise<void> {
  const store = transaction.objectStore('settings');
  const settings = Settings.safeParse(await store.get(SETTINGS_KEY)).data ?? FIRST_SETTINGS;
  if (settings.courseId === courseId) return;
  await store.put(checked('settings', { ...settings, courseId, aimedTopicId: null }), SETTINGS_KEY);
}
