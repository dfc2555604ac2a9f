import { describe, expect, it } from 'vitest';
import { CASE_NEW_IN_1_1, CASE_REQUIRED } from '#tests/data/case-required.ts';
import { readCase } from '#lib/syllabus/bring-in/case/read-case.ts';
import { StudentError } from '#lib/model/student-error.ts';
import { rowsText } from '../rows-text.ts';
import { OCEAN, aPackage } from './a-package.ts';
import type { ItemSpec } from './a-package.ts';

const read = (thing: unknown) => readCase(JSON.stringify(thing));
const rows = (items: readonly ItemSpec[]) => rowsText(read(aPackage(items)).rows);

const READ = [
  't [1] Surface waves',
  '  t [1.1] The dispersion relation',
  '    s [1.1.a] State the dispersion relation.',
  '    s [1.1.b] Explain what a dispersive wave is.',
  '  t [1.2] Group velocity',
  't [2] Tides',
];

describe('a CASE package', () => {
  it('comes in with its codes, in the order of its sequence numbers, under the title of its document', () => {
    const reading = read(aPackage(OCEAN));
    expect(rowsText(reading.rows)).toEqual(READ);
    expect(reading.remarks).toEqual([]);
    expect(reading.courseName).toBe('Foundation Oceanography');
  });

  it('has in these tests what the official schema requires, and nothing that it does not know', () => {
    const made = aPackage(OCEAN);
    const keys = (thing: object) => Object.keys(thing);
    expect(keys(made)).toEqual(expect.arrayContaining([...CASE_REQUIRED.package]));
    expect(keys(made.CFDocument).sort()).toEqual([...CASE_REQUIRED.document].sort());
    for (const item of made.CFItems)
      expect(keys(item)).toEqual(expect.arrayContaining([...CASE_REQUIRED.item]));
    for (const one of made.CFAssociations) {
      expect(keys(one)).toEqual(expect.arrayContaining([...CASE_REQUIRED.association]));
      expect(keys(one.originNodeURI)).toEqual(expect.arrayContaining([...CASE_REQUIRED.link]));
    }
  });

  it('of items with nothing but what the schema requires is read', () => {
    const { CFDocument, CFItems, CFAssociations } = aPackage(OCEAN);
    const only = (thing: object, names: readonly string[]) =>
      Object.fromEntries(Object.entries(thing).filter(([name]) => names.includes(name)));
    const reading = read({
      CFDocument: only(CFDocument, CASE_REQUIRED.document),
      CFItems: CFItems.map((item) => only(item, CASE_REQUIRED.item)),
      CFAssociations: CFAssociations.map((one) => only(one, CASE_REQUIRED.association)),
    });
    // Without sequence numbers and codes, siblings stay in the order in which they are listed.
    expect(rowsText(reading.rows)).toEqual([
      't Tides',
      't Surface waves',
      '  t Group velocity',
      '  t The dispersion relation',
      '    s Explain what a dispersive wave is.',
      '    s State the dispersion relation.',
    ]);
  });

  it('of version 1.1 reads the same, and so does one that is wrapped', () => {
    const { CFDocument, CFItems, CFAssociations } = aPackage(OCEAN);
    const newer = {
      CFDocument: { ...CFDocument, ...CASE_NEW_IN_1_1.document },
      CFItems: CFItems.map((item) => ({ ...item, ...CASE_NEW_IN_1_1.item })),
      CFAssociations: CFAssociations.map((one) => ({ ...one, ...CASE_NEW_IN_1_1.association })),
    };
    expect(rowsText(read(newer).rows)).toEqual(READ);
    expect(rowsText(read({ CFPackage: newer }).rows)).toEqual(READ);
    expect(rowsText(readCase(`\ufeff${JSON.stringify(newer)}`).rows)).toEqual(READ);
  });

  it('needs no field but a text: any other may be missing, null or of another type', () => {
    const made = aPackage(OCEAN);
    for (const name of ['uri', 'lastChangeDateTime'] as const)
      for (const value of [undefined, null, 5])
        expect(
          rowsText(read({ ...made, CFItems: made.CFItems.map((item) => ({ ...item, [name]: value })) }).rows),
        ).toEqual(READ);
  });

  it('orders items without sequence numbers by their codes, as numbers', () => {
    expect(
      rows(['1.10', '1.2', '1.1'].map((code) => ({ code, text: `Swell ${code}`, parent: null }))),
    ).toEqual(['t [1.1] Swell 1.1', 't [1.2] Swell 1.2', 't [1.10] Swell 1.10']);
  });

  it('nests by codes where it says nothing of what stands under what', () => {
    const made = aPackage([OCEAN[2]!, OCEAN[4]!, OCEAN[5]!, OCEAN[0]!], { CFAssociations: undefined });
    expect(rowsText(read(made).rows)).toEqual([READ[0], READ[1], READ[2], READ[5]]);
  });

  it('gives a long item its short title, and keeps the whole as a statement where nothing else stands below', () => {
    const text = 'Waves on water of any depth obey one relation between frequency and wavenumber.';
    expect(rows([{ code: '1', text, short: 'Dispersion' }])).toEqual(['t [1] Dispersion', `  s [1] ${text}`]);
    expect(
      rows([
        { code: '1', text, short: 'Dispersion' },
        { code: '1.1', text: 'Swell', parent: '1' },
      ]),
    ).toEqual(['t [1] Dispersion', '  t [1.1] Swell']);
  });

  it('takes an item for a statement where its type says so', () => {
    expect(
      rows([
        { code: '1', text: 'Waves' },
        { code: '1.1', text: 'Swell outruns its storm', parent: '1', type: 'Learning Outcome' },
      ]),
    ).toEqual(['t [1] Waves', '  s [1.1] Swell outruns its storm']);
  });

  it('takes tiers and marks from the texts', () => {
    const { rows: made } = read(
      aPackage([
        { code: '1', text: 'Waves (20 marks)' },
        { code: '1.1', text: 'Shoaling (HL only)', parent: '1' },
      ]),
    );
    expect(made).toMatchObject([
      { text: 'Waves', share: 20, unit: 'marks' },
      { text: 'Shoaling', group: 'HL' },
    ]);
  });
});

describe('what is wrong in a CASE package', () => {
  it('a circle is opened at its first item, and all of it comes in', () => {
    const reading = read(
      aPackage([
        { code: '1', text: 'Waves', parent: '3' },
        { code: '2', text: 'Swell', parent: '1' },
        { code: '3', text: 'Surf', parent: '2' },
        { code: '4', text: 'Tides', parent: '4' },
      ]),
    );
    expect(rowsText(reading.rows)).toEqual(['t [1] Waves', '  t [2] Swell', '    t [3] Surf', 't [4] Tides']);
    expect(reading.remarks).toEqual([
      { line: 1, about: 'circle' },
      { line: 4, about: 'circle' },
    ]);
  });

  it('an item whose parent is missing stands at the top', () => {
    const reading = read(
      aPackage([
        { code: '1', text: 'Waves' },
        { code: '9.1', text: 'Ice', parent: '9' },
      ]),
    );
    expect(rowsText(reading.rows)).toEqual(['t [1] Waves', 't [9.1] Ice']);
    expect(reading.remarks).toEqual([{ line: 2, about: 'no-parent' }]);
  });

  it('an item with two parents stands under the first', () => {
    const made = aPackage([
      { code: '1', text: 'Waves' },
      { code: '2', text: 'Tides' },
      { code: '3', text: 'Seiches', parent: '1' },
      { code: '3', text: 'Seiches', parent: '2' },
    ]);
    const reading = read({ ...made, CFItems: made.CFItems.slice(0, 3) });
    expect(rowsText(reading.rows)).toEqual(['t [1] Waves', '  t [3] Seiches', 't [2] Tides']);
    expect(reading.remarks).toEqual([{ line: 3, about: 'two-parents' }]);
  });

  it('items without text are left out, and codes that stand twice are told', () => {
    const reading = read(
      aPackage([
        { code: '1.1', text: 'Waves' },
        { code: '1.2', text: ' ' },
        { code: '1.1', text: 'Tides' },
      ]),
    );
    expect(reading.rows).toHaveLength(2);
    expect(reading.remarks).toEqual([
      { line: 2, about: 'no-text', text: '1.2' },
      { line: 3, about: 'code-twice' },
    ]);
  });

  it.each([
    ['half a file', JSON.stringify(aPackage(OCEAN)).slice(0, 500), 'errorCaseBroken'],
    ['other JSON', '{"CFDocument": {}, "topics": []}', 'errorCaseNone'],
    ['no items', JSON.stringify(aPackage([])), 'errorCaseNone'],
    ['a list', '[1, 2]', 'errorCaseNone'],
  ])('%s is told', (_, text, name) => {
    expect(() => readCase(text)).toThrow(new StudentError(name as 'errorCaseNone'));
  });

  it('a chain of 20,000 items is read without running out of stack', () => {
    const long = Array.from({ length: 20_000 }, (_, i) => ({
      code: `c${i}`,
      text: `Wave ${i}`,
      parent: i === 0 ? null : `c${i - 1}`,
    }));
    const reading = read(aPackage(long));
    expect(reading.rows).toHaveLength(5000);
    expect(Math.max(...reading.rows.map(({ depth }) => depth))).toBe(11);
    expect(reading.remarks.at(-1)).toMatchObject({ about: 'too-many' });
  });
});
