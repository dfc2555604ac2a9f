import type { SetAside } from '#lib/model/set-aside.ts';
import type { Db, StoreName } from './schema.ts';
import { ROWS } from './schema.ts';
import { writeStep } from './steps.ts';
import { write } from './write.ts';

/** Stores whose rows the student can delete and put back. */
export type Deletable = 'clips' | 'questions' | 'lines' | 'lessons';

const idOf = (row: unknown): string | undefined =>
  typeof row === 'object' && row !== null && 'id' in row && typeof row.id === 'string' ? row.id : undefined;

/** Moves rows that do not fit their schema out of the way, whole, in one transaction. */
export async function setAsideUnreadable(db: Db, store: StoreName, rows: unknown[]): Promise<void> {
  // Settings and caches are made anew; a row without its key cannot be moved and stays where it is.
  const movable = rows.filter((row) => idOf(row) !== undefined);
  if (movable.length === 0) return;
  await write(db, [store, 'setAside', 'memories'], async (transaction) => {
    const from = transaction.objectStore(store);
    for (const row of movable) {
      const now = await from.get(idOf(row)!);
      const check = ROWS[store].safeParse(now);
      // Another page may have moved or mended it meanwhile.
      if (now === undefined || check.success) continue;
      const aside: SetAside = {
        store,
        row: now,
        why: 'unreadable',
        problem: check.error.message,
        at: Date.now(),
      };
      await transaction.objectStore('setAside').add(aside);
      await from.delete(idOf(row)!);
    }
    if (store === 'attempts') await transaction.objectStore('memories').clear();
  });
}

/** Deletes a row so that it can be put back: it moves to the rows set aside. Gives the key to put it back with. */
export async function deleteRow(
  db: Db,
  store: Deletable,
  id: string,
  at: number,
): Promise<number | undefined> {
  return writeStep(db, { name: 'delete', at }, [store, 'setAside', 'nextUp'], async (transaction) => {
    const row = await transaction.objectStore(store).get(id);
    if (row === undefined) return undefined;
    await transaction.objectStore(store).delete(id);
    await transaction.objectStore('nextUp').clear();
    return transaction.objectStore('setAside').add({ store, row, why: 'deleted', problem: '', at });
  });
}

/** Puts a row set aside back where it was. Gives false when it cannot be read (it then stays set aside). */
export async function putBack(db: Db, key: number): Promise<boolean> {
  const aside = await db.get('setAside', key);
  if (!aside || !(aside.store in ROWS)) return false;
  const store = aside.store as StoreName;
  const check = ROWS[store].safeParse(aside.row);
  if (!check.success) return false;
  return write(db, [store, 'setAside', 'nextUp', 'memories'], async (transaction) => {
    await transaction.objectStore(store).put(check.data as never);
    await transaction.objectStore('setAside').delete(key);
    await transaction.objectStore('nextUp').clear();
    if (store === 'attempts') await transaction.objectStore('memories').clear();
    return true;
  });
}

/** A row set aside together with its key. */
export type KeptAside = SetAside & { key: number };

/** Everything set aside, newest first. */
export async function readSetAside(db: Db): Promise<KeptAside[]> {
  const rows: KeptAside[] = [];
  for (
    let cursor = await db.transaction('setAside').store.openCursor(null, 'prev');
    cursor;
    cursor = await cursor.continue()
  )
    rows.push({ ...cursor.value, key: cursor.key });
  return rows;
}
