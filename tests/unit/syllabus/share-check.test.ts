import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { groupsOf, switchGroup } from '#lib/syllabus/groups.ts';
import type { OutlineDraftRow } from '#lib/syllabus/outline-row.ts';
import { readOutline } from '#lib/syllabus/read-outline.ts';
import { checkShares, evenShares, scaleShares } from '#lib/syllabus/share-check.ts';

const rowsFrom = (...lines: string[]): OutlineDraftRow[] => readOutline(lines.join('\n')).rows;
const check = (...lines: string[]) =>
  checkShares(rowsFrom(...lines)).map(({ kind, parent, sum, whole }) => ({ kind, parent, sum, whole }));

describe('shares', () => {
  it.each([
    ['that add up to 100 %', ['1 Waves (60 %)', '2 Tides (40 %)']],
    ['that are rounded', ['1 Waves (33 %)', '2 Tides (33 %)', '3 Ice (33 %)']],
    ['of some only', ['1 Waves (60 %)', '2 Tides']],
    ['in marks, whatever they add up to', ['1 Waves (30 marks)', '2 Tides (100 marks)']],
    [
      'within a topic, of the topic',
      ['1 Waves (40 %)', '1.1 Swell (30 %)', '1.2 Surf (10 %)', '2 Tides (60 %)'],
    ],
    ['within a topic, of all', ['1 Waves (40 %)', '1.1 Swell (30 %)', '1.2 Surf (70 %)', '2 Tides (60 %)']],
    ['of none', ['1 Waves', '2 Tides']],
  ])('%s are right', (_, lines) => {
    expect(check(...lines)).toEqual([]);
  });

  it('that add up to 0 or 130 %, or are given in two units, are told', () => {
    expect(check('1 Waves (0 %)', '2 Tides (0 %)')).toEqual([
      { kind: 'zero', parent: -1, sum: 0, whole: 100 },
    ]);
    expect(check('1 Waves (80 %)', '2 Tides (50 %)')).toEqual([
      { kind: 'not-whole', parent: -1, sum: 130, whole: 100 },
    ]);
    expect(check('1 Waves (40 %)', '2 Tides (50 %)')).toMatchObject([{ kind: 'not-whole', sum: 90 }]);
    expect(check('1 Waves (40 %)', '2 Tides (12 marks)')).toMatchObject([{ kind: 'mixed' }]);
    expect(check('1 Waves (40 %)', '1.1 Swell (30 %)', '1.2 Surf (20 %)', '2 Tides (60 %)')).toEqual([
      { kind: 'not-whole', parent: 0, sum: 50, whole: 40 },
    ]);
  });

  it('of an option that is switched off do not count', () => {
    const rows = rowsFrom('1 Waves (60 %)', '2 Ice (Option A) (40 %)', '3 Sand (Option B) (40 %)');
    expect(checkShares(rows)).toMatchObject([{ kind: 'not-whole', sum: 140 }]);
    expect(checkShares(switchGroup(rows, 'Option B', true))).toEqual([]);
  });

  it('are scaled in proportion, and add up to the whole to a tenth', () => {
    const rows = rowsFrom('1 Waves (80 %)', '2 Tides (50 %)', '3 Ice');
    const [trouble] = checkShares(rows);
    const scaled = scaleShares(rows, trouble!);
    expect(scaled.map(({ share }) => share)).toEqual([61.5, 38.5, null]);
    expect(checkShares(scaled)).toEqual([]);
    expect(scaled[2]).toBe(rows[2]);
  });

  it('are made even by taking them away', () => {
    const rows = rowsFrom('1 Waves (0 %)', '2 Tides (0 %)');
    const even = evenShares(rows, checkShares(rows)[0]!);
    expect(even.map(({ share, unit }) => [share, unit])).toEqual([
      [null, undefined],
      [null, undefined],
    ]);
    expect(checkShares(even)).toEqual([]);
  });

  it('once scaled are never wrong again, whatever they were', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 500 }), { minLength: 1, maxLength: 30 }), (shares) => {
        const rows = shares.map((share): OutlineDraftRow => ({
          kind: 'topic',
          depth: 0,
          code: '',
          text: 'Waves',
          share,
          unit: 'percent',
        }));
        const [trouble] = checkShares(rows);
        if (trouble?.kind !== 'not-whole') return;
        expect(checkShares(scaleShares(rows, trouble))).toEqual([]);
      }),
    );
  });
});

describe('tiers and options', () => {
  const rows = rowsFrom('1 Waves', '1.1 Swell (HL only)', '1.2 Surf (HL only)', '2 Option A: Ice', '3 Sand');

  it('are listed as they are first named', () => {
    expect(groupsOf(rows)).toEqual([
      { name: 'HL', rows: 2, off: false },
      { name: 'Option A', rows: 1, off: false },
    ]);
  });

  it('are switched off and on as a whole', () => {
    const off = switchGroup(rows, 'HL', true);
    expect(off.map((row) => row.off)).toEqual([undefined, true, true, undefined, undefined]);
    expect(groupsOf(off)[0]).toMatchObject({ off: true });
    expect(groupsOf(off.map((row, i) => (i === 1 ? rows[1]! : row)))[0]).toMatchObject({ off: null });
    expect(switchGroup(off, 'HL', false)).toEqual(rows);
  });
});
