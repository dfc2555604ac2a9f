import { expect, test } from 'vitest';
import { onChange, type Change } from '#lib/store/changes.ts';
import { checked, write } from '#lib/store/write.ts';
import { aCourse, aLine, aQuestion } from '../builders.ts';
import { freshDeck } from './fresh-deck.ts';

test('an action that fails half-way leaves nothing behind and tells nobody', async () => {
  const db = await freshDeck();
  const heard: Change[] = [];
  const closing = new AbortController();
  onChange((change) => heard.push(change), closing.signal);
  const failing = write(db, ['courses', 'questions'], async (transaction) => {
    await transaction.objectStore('courses').put(aCourse());
    throw new Error('half-way');
  });
  await expect(failing).rejects.toMatchObject({ message: 'errorNotSaved', values: ['half-way'] });
  expect(await db.count('courses')).toBe(0);
  expect(heard).toEqual([]);
  closing.abort();
});

test('an action that went well is announced with the stores and rows that it wrote', async () => {
  const db = await freshDeck();
  const heard: Change[] = [];
  const closing = new AbortController();
  onChange((change) => heard.push(change), closing.signal);
  const [kept, gone] = [aCourse(), aCourse()];
  await write(db, ['courses', 'topics'], async (transaction) => {
    await transaction.objectStore('courses').put(kept);
    await transaction.objectStore('courses').delete(gone.id);
  });
  expect(heard).toEqual([
    { stores: ['courses', 'topics'], rows: { courses: [kept.id, gone.id], topics: [] } },
  ]);
  closing.abort();
  await write(db, ['courses'], (transaction) => transaction.objectStore('courses').put(aCourse()));
  expect(heard).toHaveLength(1);
});

test('rows that cannot be named, or are too many to name, leave their store out', async () => {
  const db = await freshDeck();
  const heard: Change[] = [];
  const closing = new AbortController();
  onChange((change) => heard.push(change), closing.signal);
  await write(db, ['courses', 'topics', 'lines'], async (transaction) => {
    await transaction.objectStore('courses').clear();
    await transaction.objectStore('topics').delete(IDBKeyRange.lowerBound('a'));
    await transaction.objectStore('topics').delete('b');
    for (let i = 0; i <= 1000; i++) await transaction.objectStore('lines').put(aLine());
  });
  expect(heard).toEqual([{ stores: ['courses', 'topics', 'lines'], rows: {} }]);
  expect(await db.count('lines')).toBe(1001);
  closing.abort();
});

test('a write asks for strict durability', async () => {
  const db = await freshDeck();
  const asked: unknown[] = [];
  const real = db.transaction.bind(db);
  db.transaction = ((...args: unknown[]) => {
    asked.push(args[2]);
    return (real as (...all: unknown[]) => unknown)(...args);
  }) as never;
  await write(db, ['courses'], (transaction) => transaction.objectStore('courses').put(aCourse()));
  expect(asked).toEqual([{ durability: 'strict' }]);
});

test('a full disk is told as such', async () => {
  const db = await freshDeck();
  const full = write(db, ['courses'], async () => {
    throw new DOMException('no room', 'QuotaExceededError');
  });
  await expect(full).rejects.toMatchObject({ message: 'errorStorageFull' });
});

test('a row that could not be read back is not written', () => {
  expect(() => checked('questions', { ...aQuestion(), marks: 0 })).toThrow(
    expect.objectContaining({ message: 'errorFieldWrong' }),
  );
  const question = aQuestion();
  expect(checked('questions', question)).toEqual(question);
});
