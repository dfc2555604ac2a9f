import type { IndexNames } from 'idb';
import type { Db, Deck, Row, StoreName } from './schema.ts';
import { ROWS } from './schema.ts';
import { setAsideUnreadable } from './set-aside.ts';

/**
 * The rows that can be read, in key order; rows that cannot are set aside and reported, never lost and never fatal.
 */
async function readable<S extends StoreName>(db: Db, store: S, rows: unknown[]): Promise<Row<S>[]> {
  const good: Row<S>[] = [];
  const bad: unknown[] = [];
  for (const row of rows) {
    const result = ROWS[store].safeParse(row);
    if (result.success) good.push(result.data as Row<S>);
    else bad.push(row);
  }
  if (bad.length > 0) await setAsideUnreadable(db, store, bad);
  return good;
}

/** Every row of a store. */
export async function readAll<S extends StoreName>(db: Db, store: S): Promise<Row<S>[]> {
  return readable(db, store, await db.getAll(store));
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
