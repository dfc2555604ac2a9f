import 'fake-indexeddb/auto';
import { openDB } from 'idb';
import { expect, test } from 'vitest';
import { firstDeck } from '#lib/store/migrations/001-first-deck.ts';
import { openDeck } from '#lib/store/open.ts';
import { readAll } from '#lib/store/read.ts';
import { readSetAside } from '#lib/store/set-aside.ts';
import { aClip, aQuestion, MORNING, newId } from '../builders.ts';

/** A deck as the first version left it. */
async function deckOfVersion1(
  name: string,
  rows: { clips: object[]; sources: object[]; questions: object[] },
) {
  const db = await openDB(name, 1, {
    upgrade: (old, _from, _to, transaction) => firstDeck.run(old, transaction as never),
  });
  for (const [store, all] of Object.entries(rows)) for (const row of all) await db.put(store, row);
  db.close();
}

test('a deck of version 1 opens with the same content; clips have no pictures, sources no date', async () => {
  const { pictureIds: _new, ...clip } = aClip();
  const source = {
    id: clip.sourceId,
    createdAt: MORNING,
    changedAt: MORNING,
    kind: 'page',
    url: 'http://127.0.0.1/waves',
    title: 'Waves',
    site: 'The Lagoonery',
    author: '',
  };
  const question = aQuestion();
  await deckOfVersion1('old', { clips: [clip], sources: [source], questions: [question] });
  const db = await openDeck({ name: 'old' });
  expect(await readAll(db, 'clips')).toEqual([{ ...clip, pictureIds: [] }]);
  expect(await readAll(db, 'sources')).toEqual([{ ...source, published: '', licence: '' }]);
  expect(await readAll(db, 'questions')).toEqual([question]);
  expect(await readSetAside(db)).toEqual([]);
  expect(await db.count('pictures')).toBe(0);
});

test('an empty deck of version 1 opens', async () => {
  await deckOfVersion1('empty', { clips: [], sources: [], questions: [] });
  const db = await openDeck({ name: 'empty' });
  expect(await readAll(db, 'clips')).toEqual([]);
});

test('a row that was bad before the step is still set aside after it, whole', async () => {
  const bad = { id: newId(), courseId: newId(), text: 5 };
  await deckOfVersion1('bad', { clips: [bad], sources: [], questions: [] });
  const db = await openDeck({ name: 'bad' });
  expect(await readAll(db, 'clips')).toEqual([]);
  expect((await readSetAside(db))[0]!.row).toEqual({ ...bad, pictureIds: [] });
});
