import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  changeRow,
  indentRow,
  insertRowAfter,
  moveRowDown,
  moveRowUp,
  outdentRow,
  removeBranch,
  removeRow,
  takeIn,
} from '#lib/syllabus/edit-outline.ts';
import type { OutlineDraftRow } from '#lib/syllabus/outline-row.ts';
import { rowsText } from './rows-text.ts';

const row = (depth: number, text: string, kind: OutlineDraftRow['kind'] = 'topic'): OutlineDraftRow => ({
  kind,
  depth,
  code: '',
  text,
  share: null,
});

const OCEAN = [
  row(0, 'Waves'),
  row(1, 'Swell'),
  row(2, 'define swell', 'statement'),
  row(1, 'Surf'),
  row(0, 'Tides'),
];

describe('edits of an outline', () => {
  it('indent a row with all below it, under the row above', () => {
    expect(rowsText(indentRow(OCEAN, 4))).toEqual(rowsText([...OCEAN.slice(0, 4), row(1, 'Tides')]));
    expect(rowsText(indentRow(OCEAN, 3)).slice(2)).toEqual(['    s define swell', '    t Surf', 't Tides']);
    expect(indentRow(OCEAN, 1)).toEqual(OCEAN);
    expect(indentRow(OCEAN, 0)).toEqual(OCEAN);
  });

  it('make a topic of the statement that a row is put under', () => {
    const rows = [row(0, 'Waves'), row(1, 'define swell', 'statement'), row(1, 'Surf')];
    expect(rowsText(indentRow(rows, 2))).toEqual(['t Waves', '  t define swell', '    t Surf']);
  });

  it('outdent a row with all below it', () => {
    expect(rowsText(outdentRow(OCEAN, 1))).toEqual([
      't Waves',
      't Swell',
      '  s define swell',
      '  t Surf',
      't Tides',
    ]);
    expect(outdentRow(OCEAN, 0)).toEqual(OCEAN);
  });

  it('remove a row and lift what stood under it', () => {
    expect(rowsText(removeRow(OCEAN, 1))).toEqual(['t Waves', '  s define swell', '  t Surf', 't Tides']);
    expect(rowsText(removeRow(OCEAN, 0)).slice(0, 3)).toEqual(['t Swell', '  s define swell', 't Surf']);
  });

  it('remove a row with all below it', () => {
    expect(rowsText(removeBranch(OCEAN, 1))).toEqual(['t Waves', '  t Surf', 't Tides']);
    expect(removeBranch(OCEAN, 9)).toEqual(OCEAN);
  });

  it('take a line in where it stood, as deep as what stands there', () => {
    const lined = OCEAN.map((one, i) => ({ ...one, line: 10 * i + 1 }));
    expect(rowsText(takeIn(lined, { line: 15, text: 'Foam' }))).toEqual([
      't Waves',
      '  t Swell',
      '    t Foam',
      '    s define swell',
      '  t Surf',
      't Tides',
    ]);
    expect(rowsText(takeIn(lined, { line: 99, text: 'Foam' })).at(-1)).toBe('t Foam');
    expect(rowsText(takeIn(lined, { line: 0, text: 'Foam' }))[0]).toBe('t Foam');
    expect(rowsText(takeIn([], { line: 3, text: 'Foam' }))).toEqual(['t Foam']);
  });

  it('change text, code, share and kind', () => {
    const rows = changeRow(OCEAN, 3, { text: 'explain surf', code: '(b)', kind: 'statement' });
    expect(rows[3]).toEqual({ ...OCEAN[3], text: 'explain surf', code: '(b)', kind: 'statement' });
    expect(changeRow(OCEAN, 4, { share: 20 })[4]?.share).toBe(20);
    expect(changeRow(OCEAN, 1, { kind: 'statement' })).toEqual(OCEAN);
  });

  it('insert an empty row right behind another', () => {
    expect(rowsText(insertRowAfter(OCEAN, 3))[4]).toBe('  t ');
    expect(rowsText(insertRowAfter(OCEAN, 2))[3]).toBe('    s ');
    expect(rowsText(insertRowAfter(OCEAN, 1))[2]).toBe('    s ');
  });

  it('move a row with all below it among its siblings, and keep it the same object', () => {
    const moved = moveRowUp(OCEAN, 3);
    expect(rowsText(moved)).toEqual(['t Waves', '  t Surf', '  t Swell', '    s define swell', 't Tides']);
    expect(moved[1]).toBe(OCEAN[3]);
    expect(rowsText(moveRowDown(OCEAN, 0))[0]).toBe('t Tides');
    expect(moveRowDown(moveRowUp(OCEAN, 3), 1)).toEqual(OCEAN);
    expect(moveRowUp(OCEAN, 1)).toEqual(OCEAN);
    expect(moveRowDown(OCEAN, 3)).toEqual(OCEAN);
  });

  it('never change the rows they were given, and never let a depth jump', () => {
    const edits = [
      indentRow,
      outdentRow,
      removeRow,
      removeBranch,
      insertRowAfter,
      moveRowUp,
      moveRowDown,
      (rows: OutlineDraftRow[], at: number) => changeRow(rows, at, { kind: 'statement' }),
    ];
    const step = fc.tuple(fc.constantFrom(...edits), fc.integer({ min: -1, max: 9 }));
    fc.assert(
      fc.property(fc.array(step, { maxLength: 40 }), (steps) => {
        let rows = OCEAN;
        for (const [edit, at] of steps) {
          const before = structuredClone(rows);
          const next = edit(rows, at);
          expect(rows).toEqual(before);
          rows = next;
          rows.forEach((r, i) => {
            expect(r.depth).toBeLessThanOrEqual((rows[i - 1]?.depth ?? -1) + 1);
            const isLeaf = (rows[i + 1]?.depth ?? 0) <= r.depth;
            if (r.kind === 'statement') expect(isLeaf && r.depth > 0).toBe(true);
          });
        }
      }),
    );
  });
});
