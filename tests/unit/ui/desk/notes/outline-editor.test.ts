import fc from 'fast-check';
import { beforeEach, describe, expect, test, vi } from 'vitest';
import type { Line } from '#lib/model/item.ts';
import { textOfLine } from '#lib/notes/lines/line-text.ts';
import { atShownDepths } from '#lib/notes/lines/outline.ts';
import { type LineEdit, editLines } from '#lib/store/actions/lines.ts';
import { readAll } from '#lib/store/read.ts';
import type { Db } from '#lib/store/schema.ts';
import { readSteps, turnStep } from '#lib/store/steps.ts';
import { OutlineEditor } from '#lib/ui/desk/notes/outline-editor.ts';
import { MORNING, newId } from '../../../builders.ts';
import { freshDeck } from '../../../store/fresh-deck.ts';
import { fakeExtension } from '../../fake-extension.ts';

beforeEach(() => fakeExtension());

const place = { courseId: newId(), topicId: newId() };

async function inDeck(db: Db): Promise<Line[]> {
  return atShownDepths((await readAll(db, 'lines')).sort((a, b) => a.order - b.order));
}

/** Lines as they read: depth as dashes, | where the lead ends. */
const drawn = (lines: readonly Line[]): string[] =>
  lines.map((line) => {
    const { text, leadEnd } = textOfLine(line);
    return `${'-'.repeat(line.depth)}${text.slice(0, leadEnd)}|${text.slice(leadEnd)}`;
  });

function editorOn(db: Db, write?: (edit: LineEdit) => Promise<void>) {
  let at = MORNING;
  const save = write ?? ((edit: LineEdit) => editLines(db, edit, (at += 5000)));
  const changed = vi.fn();
  return new OutlineEditor({ ...place, save, newId, changed });
}

async function written(texts: readonly string[]) {
  const db = await freshDeck();
  const editor = editorOn(db);
  editor.add(texts);
  await editor.flush();
  return { db, editor };
}

describe('the outline', () => {
  test('lines are begun by Enter, typed, moved in and parted; all of it is in the deck', async () => {
    const { db, editor } = await written(['']);
    editor.type('Tides');
    editor.split(5);
    editor.moveIn();
    editor.type('Spring: at new moon');
    editor.split(19);
    editor.type('Neap: at half moon');
    editor.split(7);
    await editor.flush();
    const expected = ['Tides|', '-Spring:| at new moon', '-Neap:| a', '-t half moon|'];
    expect(drawn(editor.lines)).toEqual(expected);
    expect(drawn(await inDeck(db))).toEqual(expected);
    expect(editor.spot).toEqual({ id: editor.lines[3]!.id, caret: 0 });
    editor.joinBefore();
    await editor.flush();
    expect(drawn(await inDeck(db))).toEqual(['Tides|', '-Spring:| at new moon', '-Neap:| a t half moon']);
    expect(editor.spot).toEqual({ id: editor.lines[2]!.id, caret: 8 });
  });

  test('Enter at the start of a line begins an empty one above it, and the line stays itself', async () => {
    const { db, editor } = await written(['Tides: twice a day']);
    const { id } = editor.lines[0]!;
    editor.split(0);
    await editor.flush();
    expect((await inDeck(db)).map((line) => line.id)).toEqual([editor.lines[0]!.id, id]);
    expect(drawn(editor.lines)).toEqual(['|', 'Tides:| twice a day']);
    expect(editor.spot?.id).toBe(id);
    editor.joinBefore();
    await editor.flush();
    expect((await inDeck(db)).map((line) => line.id)).toEqual([id]);
  });

  test('the lead ends where the student says, never inside a formula', async () => {
    const { db, editor } = await written([String.raw`Waves \(c^2\) are fast`]);
    editor.endLead(8);
    await editor.flush();
    expect(drawn(await inDeck(db))).toEqual([String.raw`Waves \(c^2\)| are fast`]);
    editor.endLead(100);
    await editor.flush();
    expect(drawn(await inDeck(db))).toEqual([String.raw`Waves \(c^2\) are fast|`]);
  });

  test('lines go up and down with those below them, are left out and taken away', async () => {
    const { db, editor } = await written(['a', 'b', 'c']);
    editor.enter(editor.lines[1]!.id);
    editor.moveIn();
    editor.enter(editor.lines[0]!.id);
    editor.movePast('down', 0);
    editor.leaveOut(editor.lines[0]!.id, 'known');
    await editor.flush();
    expect(drawn(await inDeck(db))).toEqual(['c|', 'a|', '-b|']);
    expect((await inDeck(db)).map(({ leftOut }) => leftOut)).toEqual(['known', null, null]);
    editor.remove(editor.lines[1]!.id);
    await editor.flush();
    expect(drawn(editor.lines)).toEqual(['c|', '-b|']);
    expect(editor.spot?.id).toBe(editor.lines[0]!.id);
  });

  test('several lines that are pasted come after the one in hand, in place of an empty one', async () => {
    const { db, editor } = await written(['a', '', 'z']);
    editor.enter(editor.lines[1]!.id);
    editor.add(['b: one', 'c']);
    await editor.flush();
    expect(drawn(await inDeck(db))).toEqual(['a|', 'b:| one', 'c|', 'z|']);
    expect(editor.lines.find(({ id }) => id === editor.spot?.id)).toMatchObject({ lead: 'c' });
  });
});

describe('what comes from elsewhere', () => {
  test('is taken in when nothing is on its way, and not while the student types', async () => {
    const { db, editor } = await written(['a']);
    const [line] = editor.lines;
    await editLines(db, { name: 'changeLine', change: [{ id: line!.id, lead: 'elsewhere' }] }, MORNING);
    editor.type('here');
    expect(editor.adopt(await inDeck(db))).toBe(false);
    expect(editor.typed?.text).toBe('here');
    await editor.flush();
    expect(editor.adopt(await inDeck(db))).toBe(true);
    expect(drawn(await inDeck(db))).toEqual(['here|']);
    await editLines(db, { name: 'changeLine', change: [{ id: line!.id, lead: 'again' }] }, MORNING);
    expect(editor.adopt(await inDeck(db))).toBe(true);
    expect(editor.typed?.text).toBe('again');
  });

  test('a space that is typed before the next word stays when the line comes back from the deck', async () => {
    const { db, editor } = await written(['']);
    editor.type('long ');
    await editor.flush();
    expect(editor.adopt(await inDeck(db))).toBe(true);
    expect(editor.typed?.text).toBe('long ');
  });

  test('a line in hand that was deleted elsewhere is left', async () => {
    const { editor } = await written(['a']);
    expect(editor.adopt([])).toBe(true);
    expect([editor.spot, editor.typed]).toEqual([null, null]);
  });
});

test('what cannot be written stays, is told, and is written in order once it can be', async () => {
  const db = await freshDeck();
  let isFull = false;
  const editor = editorOn(db, async (edit) => {
    if (isFull) throw new Error('full');
    await editLines(db, edit, MORNING);
  });
  editor.add(['a']);
  await editor.flush();
  isFull = true;
  editor.type('ab');
  editor.split(2);
  editor.type('c');
  await editor.flush();
  expect(editor.keeper.trouble).not.toBeNull();
  expect(editor.adopt(await inDeck(db))).toBe(false);
  expect(drawn(editor.lines)).toEqual(['ab|', 'c|']);
  isFull = false;
  editor.keeper.retry();
  await editor.flush();
  expect(editor.keeper.trouble).toBeNull();
  expect(drawn(await inDeck(db))).toEqual(['ab|', 'c|']);
});

test('whatever is done, the deck has what is shown, and undoing all of it leaves nothing', async () => {
  const text = fc.constantFrom(
    '',
    'sea',
    'Tides: twice',
    String.raw`wave \(c = \frac{\omega}{k}\) x`,
    '👩‍🚀 e\u0301',
    'שלום',
  );
  const action = fc.record({
    what: fc.constantFrom(
      'type',
      'split',
      'join',
      'in',
      'out',
      'up',
      'down',
      'enter',
      'lead',
      'remove',
      'add',
      'undo',
    ),
    which: fc.nat(40),
    text,
  });
  await fc.assert(
    fc.asyncProperty(fc.array(action, { maxLength: 30 }), async (actions) => {
      const { db, editor } = await written(['first: line']);
      for (const { what, which, text } of actions) {
        const line = editor.lines[which % Math.max(1, editor.lines.length)];
        if (line && !editor.spot) editor.enter(line.id);
        if (what === 'type') editor.type(text);
        if (what === 'split') editor.split(which % ((editor.typed?.text.length ?? 0) + 1));
        if (what === 'join') editor.joinBefore();
        if (what === 'in') editor.moveIn();
        if (what === 'out') editor.moveOut();
        if (what === 'up' || what === 'down') editor.movePast(what, 0);
        if (what === 'enter' && line) editor.enter(line.id);
        if (what === 'lead') editor.endLead(which % ((editor.typed?.text.length ?? 0) + 1));
        if (what === 'remove' && line) editor.remove(line.id);
        if (what === 'add') editor.add([text, text]);
        if (what === 'undo') {
          await editor.flush();
          const { undo } = await readSteps(db);
          if (undo) await turnStep(db, undo.key, 'undo', MORNING);
          editor.adopt(await inDeck(db));
        }
      }
      await editor.flush();
      expect(editor.keeper.trouble).toBeNull();
      const plain = (lines: readonly Line[]) =>
        lines.map(({ id, lead, rest, depth, order }) => ({ id, lead, rest, depth, order }));
      expect(plain(editor.lines)).toEqual(plain(await inDeck(db)));
      for (let next = (await readSteps(db)).undo; next; next = (await readSteps(db)).undo)
        await turnStep(db, next.key, 'undo', MORNING);
      expect(await inDeck(db)).toEqual([]);
    }),
    { numRuns: 150 },
  );
});
