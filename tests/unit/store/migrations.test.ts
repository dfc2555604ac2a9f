import 'fake-indexeddb/auto';
import { openDB } from 'idb';
import { expect, test } from 'vitest';
import { firstDeck } from '#lib/store/migrations/001-first-deck.ts';
import { picturesAndFiles } from '#lib/store/migrations/002-pictures-and-files.ts';
import { tiersAndUnits } from '#lib/store/migrations/003-tiers-and-units.ts';
import { statementsAndLessons } from '#lib/store/migrations/004-statements-and-lessons.ts';
import { openDeck } from '#lib/store/open.ts';
import { readAll } from '#lib/store/read.ts';
import { putBack, readSetAside } from '#lib/store/set-aside.ts';
import {
  aClip,
  aCourse,
  aLine,
  aQuestion,
  aStatement,
  aTopic,
  anAttempt,
  MORNING,
  newId,
} from '../builders.ts';

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
  const { pictureIds: _new, statementIds: _too, ...clip } = aClip();
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
  expect(await readAll(db, 'clips')).toEqual([{ ...clip, pictureIds: [], statementIds: [] }]);
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
  expect((await readSetAside(db))[0]!.row).toEqual({
    ...bad,
    pictureIds: [],
    statementIds: [],
    leftOut: null,
    cleared: [],
  });
});

/** A deck as the second version left it. */
async function deckOfVersion2(name: string, rows: { topics?: object[]; statements?: object[] }) {
  const db = await openDB(name, 2, {
    async upgrade(old, _from, _to, transaction) {
      await firstDeck.run(old, transaction as never);
      await picturesAndFiles.run(old, transaction as never);
    },
  });
  for (const [store, all] of Object.entries(rows)) for (const row of all) await db.put(store, row);
  db.close();
}

test('a syllabus of version 2 opens: what was off had been dropped, and nothing belongs to a tier yet', async () => {
  const [waves, ice] = [aTopic({ order: 0 }), aTopic({ order: 1, share: 20, off: true })].map((topic) => {
    const { unit: _unit, group: _group, dropped: _dropped, ...old } = topic;
    return old;
  });
  const { group: _group, off: _off, ...statement } = aStatement({ topicId: waves!.id });
  await deckOfVersion2('two', { topics: [waves!, ice!], statements: [statement] });
  const db = await openDeck({ name: 'two' });
  expect(await readAll(db, 'topics')).toEqual([
    { ...waves, unit: 'parts', group: '', dropped: false },
    { ...ice, unit: 'parts', group: '', dropped: true },
  ]);
  expect(await readAll(db, 'statements')).toEqual([{ ...statement, group: '', off: false }]);
  expect(await readSetAside(db)).toEqual([]);
});

test('an empty deck of version 2 opens, and a bad topic is set aside whole', async () => {
  await deckOfVersion2('empty-two', {});
  expect(await readAll(await openDeck({ name: 'empty-two' }), 'topics')).toEqual([]);
  const bad = { id: newId(), courseId: newId(), title: 5 };
  await deckOfVersion2('bad-two', { topics: [bad] });
  const db = await openDeck({ name: 'bad-two' });
  expect(await readAll(db, 'topics')).toEqual([]);
  expect((await readSetAside(db))[0]!.row).toEqual({
    ...bad,
    unit: 'parts',
    group: '',
    dropped: false,
    unclear: false,
    cleared: [],
  });
});

/** A deck as the third version left it. */
async function deckOfVersion3(name: string, rows: Record<string, object[]>) {
  const db = await openDB(name, 3, {
    async upgrade(old, _from, _to, transaction) {
      await firstDeck.run(old, transaction as never);
      await picturesAndFiles.run(old, transaction as never);
      await tiersAndUnits.run(old, transaction as never);
    },
  });
  for (const [store, all] of Object.entries(rows)) for (const row of all) await db.put(store, row);
  db.close();
}

const withoutStatements = ({ statementIds: _new, ...row }: { statementIds: string[] }): object => row;

test('a deck of version 3 opens: nothing answers a statement yet, and its course aims at what is common', async () => {
  const { targetSides: _sides, targetQuestions: _questions, ...course } = aCourse();
  const [clip, question, line] = [aClip(), aQuestion(), aLine()];
  await deckOfVersion3('three', {
    courses: [course],
    clips: [withoutStatements(clip)],
    questions: [withoutStatements(question)],
    lines: [withoutStatements(line)],
  });
  const db = await openDeck({ name: 'three' });
  expect(await readAll(db, 'courses')).toEqual([{ ...course, targetSides: 8, targetQuestions: 100 }]);
  expect(await readAll(db, 'clips')).toEqual([clip]);
  expect(await readAll(db, 'questions')).toEqual([question]);
  expect(await readAll(db, 'lines')).toEqual([line]);
  expect([await db.count('lessons'), await db.count('packs')]).toEqual([0, 0]);
  expect(await readSetAside(db)).toEqual([]);
});

test('what was deleted under version 3 can still be put back; what could not be read stays as it was found', async () => {
  const [clip, question] = [aClip(), aQuestion()];
  const { pictureIds: _first, ...oldClip } = withoutStatements(clip) as typeof clip;
  const bad = { id: newId(), text: 5 };
  const aside = (store: string, row: object, why: string) => ({ store, row, why, problem: '', at: MORNING });
  await deckOfVersion3('aside', {
    setAside: [
      aside('clips', oldClip, 'deleted'),
      aside('questions', withoutStatements(question), 'deleted'),
      aside('clips', bad, 'unreadable'),
    ],
  });
  const db = await openDeck({ name: 'aside' });
  for (const { key, why } of await readSetAside(db)) expect(await putBack(db, key)).toBe(why === 'deleted');
  expect(await readAll(db, 'clips')).toEqual([clip]);
  expect(await readAll(db, 'questions')).toEqual([question]);
  expect((await readSetAside(db)).map(({ row }) => row)).toEqual([bad]);
});

test('an empty deck of version 3 opens', async () => {
  await deckOfVersion3('empty-three', {});
  expect(await readAll(await openDeck({ name: 'empty-three' }), 'courses')).toEqual([]);
});

/** A deck as the fourth version left it. */
async function deckOfVersion4(name: string, rows: Record<string, object[]>) {
  const db = await openDB(name, 4, {
    async upgrade(old, _from, _to, transaction) {
      await firstDeck.run(old, transaction as never);
      for (const { run } of [picturesAndFiles, tiersAndUnits, statementsAndLessons])
        await run(old, transaction as never);
    },
  });
  for (const [store, all] of Object.entries(rows)) for (const row of all) await db.put(store, row);
  db.close();
}

/** A row without some of its fields. */
const without = <T extends object>(row: T, ...fields: (keyof T)[]): object =>
  Object.fromEntries(Object.entries(row).filter(([field]) => !fields.includes(field as keyof T)));

test('a deck of version 4 opens: nothing is left out, moved in or cleared yet, and no order is known', async () => {
  const [course, topic, clip] = [aCourse({ paper: 'a4', columns: 2 }), aTopic(), aClip({ unclear: true })];
  const [question, line, attempt] = [aQuestion(), aLine(), anAttempt({ order: null })];
  const oldLine = without(line, 'depth', 'leftOut', 'pictureIds');
  await deckOfVersion4('four', {
    courses: [without(course, 'paper', 'columns')],
    topics: [without(topic, 'unclear', 'cleared')],
    clips: [without(clip, 'leftOut', 'cleared')],
    questions: [without(question, 'lineId')],
    lines: [oldLine],
    attempts: [without(attempt, 'order', 'turned')],
    setAside: [
      { store: 'lines', row: { ...oldLine, id: newId() }, why: 'deleted', problem: '', at: MORNING },
    ],
  });
  const db = await openDeck({ name: 'four' });
  expect(await readAll(db, 'courses')).toEqual([course]);
  expect(await readAll(db, 'topics')).toEqual([topic]);
  expect(await readAll(db, 'clips')).toEqual([clip]);
  expect(await readAll(db, 'questions')).toEqual([question]);
  expect(await readAll(db, 'lines')).toEqual([line]);
  expect(await readAll(db, 'attempts')).toEqual([attempt]);
  expect([await db.count('steps'), await db.count('memories')]).toEqual([0, 0]);
  const [aside] = await readSetAside(db);
  expect(await putBack(db, aside!.key)).toBe(true);
  expect(await readAll(db, 'lines')).toHaveLength(2);
});

test('attempts are found by course and moment after the step', async () => {
  const [early, late] = [anAttempt(), anAttempt({ at: MORNING + 5 })];
  await deckOfVersion4('moments', {
    attempts: [without({ ...late, courseId: early.courseId }, 'order'), early],
  });
  const db = await openDeck({ name: 'moments' });
  const range = IDBKeyRange.bound([early.courseId, MORNING + 1], [early.courseId, Infinity]);
  expect(await db.getAllKeysFromIndex('attempts', 'courseAt', range)).toEqual([late.id]);
});

test('an empty deck of version 4 opens', async () => {
  await deckOfVersion4('empty-four', {});
  expect(await readAll(await openDeck({ name: 'empty-four' }), 'lines')).toEqual([]);
});
