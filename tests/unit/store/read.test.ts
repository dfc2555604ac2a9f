import { expect, test } from 'vitest';
import { readAll, readBy, readOne } from '#lib/store/read.ts';
import { deleteRow, putBack, readSetAside } from '#lib/store/set-aside.ts';
import { aClip, aQuestion, newId, MORNING } from '../builders.ts';
import { freshDeck } from './fresh-deck.ts';

test('a bad row is set aside whole and reported; the good ones are read', async () => {
  const db = await freshDeck();
  const good = aQuestion();
  const bad = { ...aQuestion({ courseId: good.courseId }), marks: 'many' };
  await db.put('questions', good);
  await db.put('questions', bad as never);
  expect(await readBy(db, 'questions', 'course', good.courseId)).toEqual([good]);
  expect(await db.count('questions')).toBe(1);
  const [aside, ...others] = await readSetAside(db);
  expect(others).toEqual([]);
  expect(aside).toMatchObject({ store: 'questions', row: bad, why: 'unreadable' });
  expect(aside!.problem).toContain('marks');
});

test('reading twice at the same time sets a bad row aside once', async () => {
  const db = await freshDeck();
  await db.put('questions', { ...aQuestion(), prompt: 7 } as never);
  await Promise.all([readAll(db, 'questions'), readAll(db, 'questions'), readAll(db, 'questions')]);
  expect(await readSetAside(db)).toHaveLength(1);
});

test('an unreadable row cannot be put back, and stays set aside', async () => {
  const db = await freshDeck();
  const bad = { ...aQuestion(), marks: -1 };
  await db.put('questions', bad as never);
  await readAll(db, 'questions');
  const [aside] = await readSetAside(db);
  expect(await putBack(db, aside!.key)).toBe(false);
  expect((await readSetAside(db))[0]!.row).toEqual(bad);
});

test('what was deleted can be put back as it was', async () => {
  const db = await freshDeck();
  const clip = aClip();
  await db.put('clips', clip);
  const key = await deleteRow(db, 'clips', clip.id, MORNING);
  expect(await readOne(db, 'clips', clip.id)).toBeUndefined();
  expect(await putBack(db, key!)).toBe(true);
  expect(await readOne(db, 'clips', clip.id)).toEqual(clip);
  expect(await readSetAside(db)).toEqual([]);
});

test('deleting what is not there changes nothing', async () => {
  const db = await freshDeck();
  expect(await deleteRow(db, 'clips', newId(), MORNING)).toBeUndefined();
  expect(await readSetAside(db)).toEqual([]);
});
