import { expect, test } from 'vitest';
import { readAll, readBy, readInSlices, readOne } from '#lib/store/read.ts';
import { deleteRow, putBack, readSetAside } from '#lib/store/set-aside.ts';
import { aClip, aLine, aQuestion, newId, MORNING } from '../builders.ts';
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

test.each([0, 1, 4, 5, 6])('%i rows, two at a time, come once each and in order', async (count) => {
  const db = await freshDeck();
  const lines = Array.from({ length: count }, () => aLine());
  for (const line of lines) await db.put('lines', line);
  if (count === 5) await db.put('lines', { ...lines[2]!, depth: 99 });
  const slices: number[] = [];
  const ids: string[] = [];
  for await (const rows of readInSlices(db, 'lines', 2)) {
    slices.push(rows.length);
    ids.push(...rows.map(({ id }) => id));
  }
  const readable = lines.filter((_, i) => count !== 5 || i !== 2);
  expect(ids).toEqual(readable.map(({ id }) => id));
  expect(Math.max(0, ...slices)).toBeLessThanOrEqual(2);
  expect(await db.count('setAside')).toBe(count === 5 ? 1 : 0);
});
