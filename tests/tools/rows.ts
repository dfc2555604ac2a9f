import type { Row, StoreName } from '#lib/store/schema.ts';
import type { PageDriver } from './driver.ts';

/** Rows by store; none with bytes in it, since they travel as JSON. */
export type Rows = { [S in StoreName]?: Row<S>[] };

/** Puts rows into the deck behind the screens' backs, as if they had been there before. Open pages are not told. */
export async function putRows(page: PageDriver, rows: Rows): Promise<void> {
  await page.run(
    (all) =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open('plumbline');
        opening.onerror = () => reject(opening.error!);
        opening.onsuccess = () => {
          const transaction = opening.result.transaction(
            all.map(([store]) => store),
            'readwrite',
          );
          for (const [store, some] of all) for (const row of some) transaction.objectStore(store).put(row);
          transaction.onabort = () => reject(transaction.error!);
          transaction.oncomplete = () => {
            opening.result.close();
            resolve();
          };
        };
      }),
    Object.entries(rows) as [string, object[]][],
  );
}

/** The rows of a store as they stand on disk. */
export const rowsIn = <S extends StoreName>(page: PageDriver, store: S): Promise<Row<S>[]> =>
  page.run(
    (name) =>
      new Promise<Row<S>[]>((resolve, reject) => {
        const opening = indexedDB.open('plumbline');
        opening.onerror = () => reject(opening.error!);
        opening.onsuccess = () => {
          const all = opening.result.transaction(name).objectStore(name).getAll();
          all.onsuccess = () => {
            opening.result.close();
            resolve(all.result);
          };
        };
      }),
    store as string,
  );
