import type { IndexNames } from 'idb';
import type { Attempt } from '#lib/model/attempt.ts';
import type { Steps } from '#lib/recall/steps.ts';
import type { Db, Deck, Row, StoreName } from './schema.ts';
import { ROWS } from './schema.ts';
import { setAsideUnreadable } from './set-aside.ts';
import { inSlices } from './slices.ts';

/** Rows that are asked for at once: the database hands them over in one go, during which a page does nothing else. */
const AT_ONCE = 1000;

/**
 * The rows that can be read, in key order; rows that cannot are set aside and reported, never lost and never fatal.
 */
export async function readable<S extends StoreName>(db: Db, store: S, rows: unknown[]): Promise<Row<S>[]> {
  const good: Row<S>[] = [];
  const bad: unknown[] = [];
  const parse = function* (): Steps<void> {
    for (const row of rows) {
      const result = ROWS[store].safeParse(row);
      if (result.success) good.push(result.data as Row<S>);
      else bad.push(row);
      yield;
    }
  };
  await inSlices(parse());
  if (bad.length > 0) await setAsideUnreadable(db, store, bad);
  return good;
}

/** Every row of a store. */
export async function readAll<S extends StoreName>(db: Db, store: S): Promise<Row<S>[]> {
  return readable(db, store, await db.getAll(store));
}

/**
 * Every row of a store, so many at a time, in key order: the page may do something else in between, and a row that is
 * written meanwhile may come as it was or as it is.
 */
export async function* readInSlices<S extends StoreName>(
  db: Db,
  store: S,
  rowsAtATime: number,
): AsyncGenerator<Row<S>[]> {
  let range: IDBKeyRange | null = null;
  for (;;) {
    const transaction = db.transaction(store);
    const [keys, rows]: [Deck[S]['key'][], unknown[]] = await Promise.all([
      transaction.store.getAllKeys(range, rowsAtATime),
      transaction.store.getAll(range, rowsAtATime),
    ]);
    if (rows.length > 0) yield await readable(db, store, rows);
    if (rows.length < rowsAtATime) return;
    range = IDBKeyRange.lowerBound(keys[keys.length - 1], true);
  }
}

/** The rows of a store that an index holds under `key`. */
export async function readBy<S extends StoreName, I extends IndexNames<Deck, S>>(
  db: Db,
  store: S,
  index: I,
  key: string,
): Promise<Row<S>[]> {
  return readable(db, store, await db.getAllFromIndex(store, index, IDBKeyRange.only(key)));
}

/** One row, or undefined where there is none that can be read. */
export async function readOne<S extends StoreName>(
  db: Db,
  store: S,
  key: string,
): Promise<Row<S> | undefined> {
  const row = await db.get(store, key as Deck[S]['key']);
  return row === undefined ? undefined : (await readable(db, store, [row]))[0];
}

/** The questions or lines of a course, in key order: what readBy gives, read bit by bit. */
export async function readItemRows<S extends 'questions' | 'lines'>(
  db: Db,
  store: S,
  courseId: string,
): Promise<Row<S>[]> {
  const keys = await db.getAllKeysFromIndex(store, 'course' as never, IDBKeyRange.only(courseId));
  const rows: Row<S>[] = [];
  for (let from = 0; from < keys.length; from += AT_ONCE) {
    const last = keys[Math.min(from + AT_ONCE, keys.length) - 1]!;
    // Rows of other courses may stand in between.
    const some = await db.getAll(store, IDBKeyRange.bound(keys[from]!, last));
    const ours = some.filter((row) => row.courseId === courseId);
    rows.push(...(await readable(db, store, ours)));
  }
  return rows;
}

/** The attempts of a course, oldest first, read bit by bit. */
export async function readAttempts(db: Db, courseId: string): Promise<Attempt[]> {
  const attempts: Attempt[] = [];
  let seen = new Set<string>();
  let from = -Infinity;
  for (let atOnce = AT_ONCE; ;) {
    const range = IDBKeyRange.bound([courseId, from], [courseId, Infinity]);
    const some = await db.getAllFromIndex('attempts', 'courseAt', range, atOnce);
    const fresh = some.filter(({ id }) => !seen.has(id));
    attempts.push(...(await readable(db, 'attempts', fresh)));
    if (some.length < atOnce) return attempts;
    // The next bit begins at the moment of the last one here, which others may share.
    const { at } = some.at(-1)!;
    seen = new Set(some.filter((one) => one.at === at).map(({ id }) => id));
    if (at === from) atOnce *= 2;
    from = at;
  }
}
