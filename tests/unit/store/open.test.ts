import 'fake-indexeddb/auto';
import { openDB } from 'idb';
import { expect, test } from 'vitest';
import { migrations } from '#lib/store/migrations/index.ts';
import { emptyDeck, type Migration } from '#lib/store/migrations/migration.ts';
import { openDeck } from '#lib/store/open.ts';
import { ROWS } from '#lib/store/schema.ts';
import { aCourse } from '../builders.ts';

test('a first opening makes every store of the schema', async () => {
  const db = await openDeck({ name: 'first' });
  expect([...db.objectStoreNames].sort()).toEqual(Object.keys(ROWS).sort());
  expect(db.version).toBe(migrations.version);
  db.close();
});

test('a second opening keeps what the first one wrote', async () => {
  const course = aCourse();
  const first = await openDeck({ name: 'second' });
  await first.put('courses', course);
  first.close();
  const again = await openDeck({ name: 'second' });
  expect(await again.getAll('courses')).toEqual([course]);
  again.close();
});

test('a deck of a newer version is refused with what to do, and stays as it is', async () => {
  const newer = await openDB('newer', migrations.version + 1, {
    upgrade: (db) => void db.createObjectStore('things', { keyPath: 'id' }),
  });
  await newer.put('things', { id: 'a' });
  newer.close();
  await expect(openDeck({ name: 'newer' })).rejects.toMatchObject({ message: 'errorDeckNewer' });
  const still = await openDB('newer');
  expect(await still.getAll('things')).toEqual([{ id: 'a' }]);
  still.close();
});

test('a newer version that wants to upgrade is let through, and the page is told', async () => {
  let closed = 0;
  await openDeck({ name: 'shared', onClosed: () => closed++ });
  const newer = await openDB('shared', migrations.version + 1);
  expect(closed).toBe(1);
  newer.close();
});

test('only the migrations after the version on disk are run', () => {
  const step = <From extends number, To extends number>(from: From, to: To): Migration<From, To> => ({
    from,
    to,
    run() {},
  });
  const chain = emptyDeck.then(step(0, 1)).then(step(1, 2)).then(step(2, 3));
  expect(chain.after(1).map(({ to }) => to)).toEqual([2, 3]);
  expect(chain.after(3)).toEqual([]);
  // @ts-expect-error a gap in the chain does not compile
  emptyDeck.then(step(0, 1)).then(step(2, 3));
});
