import fc from 'fast-check';
import { expect, test } from 'vitest';
import { changeClip } from '#lib/store/actions/clips.ts';
import { addLine, addQuestion, changeLine } from '#lib/store/actions/items.ts';
import { readAll } from '#lib/store/read.ts';
import type { Db } from '#lib/store/schema.ts';
import { deleteRow, putBack, readSetAside } from '#lib/store/set-aside.ts';
import { JOIN_WITHIN, MOST_STEPS, readSteps, turnStep, writeStep } from '#lib/store/steps.ts';
import { aClip, aLine, aQuestion, MORNING, newId } from '../builders.ts';
import { freshDeck } from './fresh-deck.ts';

const place = { courseId: newId(), topicId: newId(), clipId: null };

/** Undoes or redoes what is next; gives its name, or null where there is nothing. */
async function turn(db: Db, way: 'undo' | 'redo', at = MORNING) {
  const next = (await readSteps(db))[way];
  return next && turnStep(db, next.key, way, at);
}

/** What the deck holds, whenever it was changed. */
async function content(db: Db) {
  const rows = await Promise.all(
    (['clips', 'lines', 'questions'] as const).map((store) => readAll(db, store)),
  );
  return rows.map((all) => all.map((row) => ({ ...row, changedAt: 0 })));
}

test('a change is undone and done again, and says what it was', async () => {
  const db = await freshDeck();
  const line = await addLine(db, { ...place, lead: 'Tides', rest: 'come twice a day' }, MORNING);
  await changeLine(db, line.id, { rest: 'come in and go out' }, MORNING + 1);
  expect(await turn(db, 'undo', MORNING + 9)).toBe('changeLine');
  expect(await readAll(db, 'lines')).toEqual([{ ...line, changedAt: MORNING + 9 }]);
  expect(await turn(db, 'undo')).toBe('addLine');
  expect(await readAll(db, 'lines')).toEqual([]);
  expect(await turn(db, 'undo')).toBeNull();
  expect(await turn(db, 'redo')).toBe('addLine');
  expect(await turn(db, 'redo')).toBe('changeLine');
  expect(await turn(db, 'redo')).toBeNull();
  expect(await readAll(db, 'lines')).toMatchObject([{ id: line.id, rest: 'come in and go out' }]);
});

test('whatever was done, undoing all of it gives the deck as it was, and doing it again the deck as it became', async () => {
  const action = fc.record({
    what: fc.constantFrom('add', 'ask', 'write', 'words', 'unclear', 'delete', 'undo', 'redo'),
    which: fc.nat(20),
    text: fc.string({ minLength: 1, maxLength: 5 }).filter((text) => text.trim() !== ''),
  });
  await fc.assert(
    fc.asyncProperty(fc.array(action, { maxLength: 25 }), async (actions) => {
      const db = await freshDeck();
      await db.put('clips', aClip());
      await db.put('lines', aLine(place));
      const first = await content(db);
      let at = MORNING;
      for (const { what, which, text } of actions) {
        at += 5000;
        const pick = <T>(rows: T[]): T | undefined => rows[which % Math.max(1, rows.length)];
        const line = pick(await readAll(db, 'lines'));
        const clip = pick(await readAll(db, 'clips'));
        if (what === 'add') await addLine(db, { ...place, lead: text, rest: '' }, at);
        if (what === 'ask') await addQuestion(db, { ...place, prompt: text, answer: text, marks: 1 }, at);
        if (what === 'write' && line) await changeLine(db, line.id, { rest: text }, at);
        if (what === 'words' && clip) await changeClip(db, clip.id, { ownWords: text }, at);
        if (what === 'unclear' && clip) await changeClip(db, clip.id, { unclear: !clip.unclear }, at);
        if (what === 'delete' && line) await deleteRow(db, 'lines', line.id, at);
        if (what === 'undo' || what === 'redo') await turn(db, what, at);
      }
      while (await turn(db, 'redo'));
      const last = await content(db);
      while (await turn(db, 'undo'));
      expect(await content(db)).toEqual(first);
      // What never was is nowhere; what is there again is not among the deleted.
      const lines = new Set((await readAll(db, 'lines')).map(({ id }) => id));
      for (const { row } of await readSetAside(db)) expect(lines.has((row as { id: string }).id)).toBe(false);
      while (await turn(db, 'redo'));
      expect(await content(db)).toEqual(last);
    }),
    { numRuns: 40 },
  );
});

test('a run of typing is one step, a pause begins another, and other steps do not join', async () => {
  const db = await freshDeck();
  const clip = aClip();
  await db.put('clips', clip);
  const type = (ownWords: string, at: number) => changeClip(db, clip.id, { ownWords }, at);
  await type('L', MORNING);
  await type('Lo', MORNING + JOIN_WITHIN);
  await type('Long', MORNING + 2 * JOIN_WITHIN);
  await type('Long waves', MORNING + 3 * JOIN_WITHIN + 1);
  await turn(db, 'undo');
  expect((await readAll(db, 'clips'))[0]!.ownWords).toBe('Long');
  await turn(db, 'undo');
  expect((await readAll(db, 'clips'))[0]!.ownWords).toBe('');
  expect((await readSteps(db)).undo).toBeNull();
});

test('something new forgets what was undone', async () => {
  const db = await freshDeck();
  await addLine(db, { ...place, lead: 'a', rest: '' }, MORNING);
  await addLine(db, { ...place, lead: 'b', rest: '' }, MORNING);
  await turn(db, 'undo');
  await turn(db, 'undo');
  await addLine(db, { ...place, lead: 'c', rest: '' }, MORNING);
  expect((await readSteps(db)).redo).toBeNull();
  expect((await readAll(db, 'lines')).map(({ lead }) => lead)).toEqual(['c']);
});

test('a row that was changed by something else since is left alone; the step is forgotten and told', async () => {
  const db = await freshDeck();
  const line = await addLine(db, { ...place, lead: 'a', rest: '' }, MORNING);
  await changeLine(db, line.id, { lead: 'b' }, MORNING);
  await db.put('lines', { ...line, lead: 'from elsewhere' });
  await expect(turn(db, 'undo')).rejects.toThrow('errorStepChanged');
  expect(await readAll(db, 'lines')).toMatchObject([{ lead: 'from elsewhere' }]);
  expect((await readSteps(db)).undo?.name).toBe('addLine');
});

test('a deletion that was put back by hand does not stand in the way of what came before it', async () => {
  const db = await freshDeck();
  const question = await addQuestion(db, { ...place, prompt: 'a?', answer: 'b', marks: 1 }, MORNING);
  const key = await deleteRow(db, 'questions', question.id, MORNING);
  await putBack(db, key!);
  expect(await turn(db, 'undo')).toBe('delete');
  expect(await readAll(db, 'questions')).toHaveLength(1);
  expect(await turn(db, 'undo')).toBe('addQuestion');
  expect(await readAll(db, 'questions')).toEqual([]);
});

test('an action that fails keeps no step, and one that changes nothing is none', async () => {
  const db = await freshDeck();
  const line = aLine();
  await db.put('lines', line);
  const failing = writeStep(db, { name: 'changeLine', at: MORNING }, ['lines'], async (transaction) => {
    await transaction.objectStore('lines').put({ ...line, lead: 'half' });
    throw new Error('on the way');
  });
  await expect(failing).rejects.toThrow('errorNotSaved');
  await changeLine(db, line.id, { lead: line.lead }, MORNING + 5);
  expect(await readSteps(db)).toEqual({ undo: null, redo: null });
  expect(await readAll(db, 'lines')).toMatchObject([{ lead: line.lead }]);
});

test('no more steps are kept than there is use for, the latest ones', async () => {
  const db = await freshDeck();
  const question = aQuestion();
  for (let i = 0; i < MOST_STEPS + 5; i++)
    await writeStep(db, { name: 'changeQuestion', at: MORNING }, ['questions'], (transaction) =>
      transaction.objectStore('questions').put({ ...question, prompt: `${i}` }),
    );
  expect(await db.count('steps')).toBe(MOST_STEPS);
  await turn(db, 'undo');
  expect((await readAll(db, 'questions'))[0]!.prompt).toBe(`${MOST_STEPS + 3}`);
});
