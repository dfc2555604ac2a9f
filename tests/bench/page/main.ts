// Built into a copy of the extension, where it works on the deck with the extension's own code.
import { unwrap } from 'idb';
import { type DeckSize, makeDeck } from '../make-deck.ts';
import { type NotesSize, makeNotes } from '../make-notes.ts';
import { type Pair, type Turns, inTurns, took, tookOnce } from '../timing.ts';
import { measureSearch } from './search.ts';
import { countSides } from './sides.ts';
import { SETTINGS_KEY } from '#lib/model/settings.ts';
import { readCourseDeck } from '#lib/store/course-deck.ts';
import { openDeck } from '#lib/store/open.ts';
import type { Db, StoreName } from '#lib/store/schema.ts';
import { progressOf, rankDeck } from '#lib/ui/derive/progress.ts';

const CHUNK = 5000;
const READ_FOR_COURSE = [
  'topics',
  'statements',
  'clips',
  'sources',
  'questions',
  'lines',
  'attempts',
] as const satisfies StoreName[];

async function putAll(db: Db, store: StoreName, rows: readonly unknown[]): Promise<void> {
  for (let from = 0; from < rows.length; from += CHUNK) {
    const transaction = db.transaction(store, 'readwrite', { durability: 'relaxed' });
    // Past the promises, which would take as long again.
    const bare = unwrap(transaction).objectStore(store);
    for (const row of rows.slice(from, from + CHUNK)) bare.put(row);
    await transaction.done;
  }
}

async function withDeck<T>(work: (db: Db) => Promise<T>): Promise<T> {
  const db = await openDeck();
  try {
    return await work(db);
  } finally {
    db.close();
  }
}

async function courseIdIn(db: Db): Promise<string> {
  return (await db.getAllKeys('courses'))[0]!;
}

/** The rows of a store just as the database gives them: no index, no checks. */
function bareRead(db: Db, stores: readonly StoreName[]): Promise<unknown> {
  const transaction = db.transaction(stores);
  return Promise.all(stores.map((store) => transaction.objectStore(store).getAll()));
}

const bench = {
  /** Counting printed sides while typing. */
  countSides,

  /** Writes a deck of a size, row by row as it is stored. */
  fill: (size: DeckSize) =>
    withDeck(async (db) => {
      const { course, topics, questions, attempts } = makeDeck(size, Date.now());
      await putAll(db, 'courses', [course]);
      await putAll(db, 'topics', topics);
      await putAll(db, 'questions', questions);
      await putAll(db, 'attempts', attempts);
      const settings = { courseId: course.id, aimedTopicId: null, roundMinutes: 2 };
      await db.put('settings', settings, SETTINGS_KEY);
    }),

  /** Writes clips and lines beside the questions. */
  fillNotes: (size: NotesSize) =>
    withDeck(async (db) => {
      const course = (await db.getAll('courses'))[0]!;
      const { clips, lines } = makeNotes(size, course.id, await db.getAll('topics'), course.createdAt);
      await putAll(db, 'clips', clips);
      await putAll(db, 'lines', lines);
    }),

  /** The id of the first topic. */
  firstTopic: () => withDeck(async (db) => (await db.getAll('topics'))[0]!.id),

  /** Search over them: see SearchTimes. */
  search: (size: NotesSize, repeats: number) => withDeck((db) => measureSearch(db, size, repeats)),

  /** How many items the cache of what comes next holds. */
  cachedItems: () => withDeck(async (db) => (await db.getAll('nextUp'))[0]?.items.length ?? 0),

  /** Reading the course against a bare read of the same rows. */
  readCourse: (turns: Turns): Promise<Pair> =>
    withDeck(async (db) => {
      const id = await courseIdIn(db);
      const ours = () => took(() => readCourseDeck(db, id));
      return inTurns(turns, ours, () => took(() => bareRead(db, READ_FOR_COURSE)));
    }),

  /** Memory of every item, and their order, each against a bare read of the attempts. */
  recall: (turns: Turns): Promise<{ memories: Pair; rank: Pair }> =>
    withDeck(async (db) => {
      const deck = (await readCourseDeck(db, await courseIdIn(db)))!;
      const now = Date.now();
      const bare = () => took(() => bareRead(db, ['attempts']));
      const memories = await inTurns(turns, () => tookOnce(() => progressOf(deck, now)), bare);
      const progress = progressOf(deck, now);
      return {
        memories,
        rank: await inTurns(turns, () => tookOnce(() => rankDeck(deck, progress, now)), bare),
      };
    }),
};

export type Bench = typeof bench;

Object.assign(globalThis, { bench });
