import fc from 'fast-check';
import { afterEach, expect, test } from 'vitest';
import { NO_FILTER } from '#lib/notes/search/filter.ts';
import { changeClip } from '#lib/store/actions/clips.ts';
import { announce } from '#lib/store/changes.ts';
import { DeckSearch } from '#lib/store/deck-search.ts';
import type { Db } from '#lib/store/schema.ts';
import { deleteRow, putBack } from '#lib/store/set-aside.ts';
import { write } from '#lib/store/write.ts';
import { aClip, aLine, aQuestion, MORNING, newId } from '../builders.ts';
import { freshDeck } from './fresh-deck.ts';

const COURSE = newId();
let closing = new AbortController();
afterEach(() => {
  closing.abort();
  closing = new AbortController();
});

function searchOf(db: Db, courseId: string | null = COURSE): DeckSearch {
  return new DeckSearch(db, courseId, closing.signal, (error) => {
    throw error;
  });
}

async function idsFor(search: DeckSearch, text: string): Promise<string[]> {
  // What was just announced is waited for.
  await search.ready;
  return search
    .search(text, NO_FILTER, 100)
    .kinds.flatMap(({ found }) => found.map(({ document }) => document.id))
    .sort();
}

test('it finds clips, own words, lines and questions of its course, or of all', async () => {
  const db = await freshDeck();
  const clip = aClip({ courseId: COURSE, text: 'neap', ownWords: 'lagoon' });
  const line = aLine({ courseId: COURSE, lead: 'Estuary', rest: 'neap' });
  const question = aQuestion({ courseId: COURSE, prompt: 'Spring?', answer: 'neap' });
  const elsewhere = aLine({ lead: 'neap' });
  await db.put('clips', clip);
  await db.put('lines', line);
  await db.put('lines', elsewhere);
  await db.put('questions', question);
  const search = searchOf(db);
  expect(await idsFor(search, 'neap')).toEqual([clip.id, line.id, question.id].sort());
  expect(await idsFor(search, 'lagoon')).toEqual([clip.id]);
  expect(search.progress).toEqual({ done: 3, all: 3 });
  expect(await idsFor(searchOf(db, null), 'neap')).toHaveLength(4);
});

test('it follows what is written, row by row, and tells of it', async () => {
  const db = await freshDeck();
  const clip = aClip({ courseId: COURSE, text: 'neap' });
  await db.put('clips', clip);
  const search = searchOf(db);
  await search.ready;
  let told = 0;
  search.onUpdate(() => told++, closing.signal);

  await changeClip(db, clip.id, { ownWords: 'lagoon' }, MORNING);
  expect(await idsFor(search, 'lagoon')).toEqual([clip.id]);
  expect(told).toBe(1);
  const key = await deleteRow(db, 'clips', clip.id, MORNING);
  expect(await idsFor(search, 'lagoon')).toEqual([]);
  await putBack(db, key!);
  expect(await idsFor(search, 'lagoon')).toEqual([clip.id]);
  const line = aLine({ courseId: COURSE, lead: 'lagoon' });
  await write(db, ['lines'], (transaction) => transaction.objectStore('lines').add(line));
  expect(await idsFor(search, 'lagoon')).toEqual([clip.id, line.id].sort());
  // Moved to another course: out of this search.
  await write(db, ['lines'], (transaction) =>
    transaction.objectStore('lines').put({ ...line, courseId: newId() }),
  );
  expect(await idsFor(search, 'lagoon')).toEqual([clip.id]);
});

test('a change that names its rows has only those read', async () => {
  const db = await freshDeck();
  const line = aLine({ courseId: COURSE, lead: 'neap' });
  await db.put('lines', line);
  const search = searchOf(db);
  await search.ready;
  let whole = 0;
  const real = db.transaction.bind(db);
  db.transaction = ((...args: unknown[]) => {
    // A read of all of a store goes by slices, each in a transaction of its own.
    if (args[0] === 'lines' && args.length === 1) whole++;
    return (real as (...all: unknown[]) => unknown)(...args);
  }) as never;
  const other = { ...line, lead: 'lagoon' };
  await write(db, ['lines', 'clips'], (transaction) => transaction.objectStore('lines').put(other));
  expect(await idsFor(search, 'lagoon')).toEqual([line.id]);
  expect(whole).toBe(0);
});

test('a change that names no rows is followed all the same', async () => {
  const db = await freshDeck();
  const [stays, changes, goes, comes] = ['a', 'b', 'c', 'd'].map(() =>
    aLine({ courseId: COURSE, lead: 'neap' }),
  );
  const question = aQuestion({ courseId: COURSE, prompt: 'neap?' });
  await db.put('questions', question);
  for (const line of [stays!, changes!, goes!]) await db.put('lines', line);
  const search = searchOf(db);
  await search.ready;
  await db.put('lines', { ...changes!, lead: 'lagoon' });
  await db.put('lines', comes!);
  await db.delete('lines', goes!.id);
  announce(['lines']);
  expect(await idsFor(search, 'neap')).toEqual([stays!.id, comes!.id, question.id].sort());
  expect(await idsFor(search, 'lagoon')).toEqual([changes!.id]);
});

test('what is written while it reads is not missed', async () => {
  const db = await freshDeck();
  const line = aLine({ courseId: COURSE, lead: 'neap' });
  const search = searchOf(db);
  await write(db, ['lines'], (transaction) => transaction.objectStore('lines').add(line));
  expect(await idsFor(search, 'neap')).toEqual([line.id]);
});

test('once it is ended, it follows nothing more', async () => {
  const db = await freshDeck();
  const search = searchOf(db);
  await search.ready;
  closing.abort();
  await write(db, ['lines'], (transaction) =>
    transaction.objectStore('lines').add(aLine({ courseId: COURSE })),
  );
  expect(search.progress.done).toBe(0);
});

test('after random changes it finds what a search opened anew finds', async () => {
  const aChange = fc.record({
    row: fc.integer({ min: 0, max: 5 }),
    lead: fc.constantFrom('neap tide', 'spring tides', 'lagoon', null),
    isNamed: fc.boolean(),
  });
  await fc.assert(
    fc.asyncProperty(fc.array(aChange, { maxLength: 12 }), async (changes) => {
      const db = await freshDeck();
      const lines = Array.from({ length: 6 }, () => aLine({ courseId: COURSE, lead: 'neap' }));
      await db.put('lines', lines[0]!);
      const search = searchOf(db);
      for (const { row, lead, isNamed } of changes) {
        const line = lines[row]!;
        if (isNamed)
          await write(db, ['lines'], async (transaction) => {
            if (lead === null) await transaction.objectStore('lines').delete(line.id);
            else await transaction.objectStore('lines').put({ ...line, lead });
          });
        else {
          await (lead === null ? db.delete('lines', line.id) : db.put('lines', { ...line, lead }));
          announce(['lines']);
        }
      }
      const anew = searchOf(db);
      for (const text of ['neap', 'tide', 'lagoon', 'springs '])
        expect(await idsFor(search, text)).toEqual(await idsFor(anew, text));
      closing.abort();
      closing = new AbortController();
    }),
    { numRuns: 30 },
  );
});
