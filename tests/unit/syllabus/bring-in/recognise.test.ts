import fc from 'fast-check';
import { expect, it } from 'vitest';
import { readFileSync } from 'node:fs';
import { TEXT_FORMATS, readText, recogniseFormat } from '#lib/syllabus/bring-in/read-text.ts';
import { StudentError } from '#lib/model/student-error.ts';
import { normaliseRows } from '#lib/syllabus/normalise-rows.ts';
import { LONGEST } from '#lib/syllabus/outline-row.ts';
import { OCEAN, aPackage } from './a-package.ts';

it.each([
  ['a numbered outline', '1 Waves\n1.1 Swell, surf, and foam\n2 Tides', 'outline'],
  ['an outline set in by tabs', 'Waves\n\tSwell\n\t\tState k.\nTides', 'outline'],
  ['numbers with a tab behind them', '1\tWaves\n1.1\tSwell\n2\tTides', 'outline'],
  ['sentences with commas', 'Waves, tides and ice\nState k, ω and T\nName a, b and c', 'outline'],
  ['bullets', '- Waves\n  - Swell\n- Tides', 'outline'],
  ['a rule below a title', 'Sea\n1 Waves\n-----\n2 Tides', 'outline'],
  ['headings', '# Sea\n1 Waves', 'markdown'],
  ['underlined headings', 'Sea\n===\n- Waves', 'markdown'],
  ['a header with commas', 'Code,Topic\n1,Waves', 'table'],
  ['a header with semicolons', 'Code;Topic\n1;Waves', 'table'],
  ['a header with tabs', 'Topic\tMarks\nWaves\t3', 'table'],
  ['cells from a spreadsheet', '1\tWaves\tState k.\n1\tWaves\tName two.\n2\tTides\tName one.', 'table'],
  ['rows with codes', '1,Waves,3\n2,Tides,4\n3,Ice,5', 'table'],
  ['quoted cells over lines', 'code,topic\r\n1,"Waves\r\nand more"\r\n', 'table'],
  ['a CASE package', JSON.stringify(aPackage(OCEAN)), 'case'],
  ['a CASE package that is cut off', JSON.stringify(aPackage(OCEAN)).slice(0, 300), 'case'],
  ['nothing', ' ', 'outline'],
  ['no text', 'PK\0\0', 'outline'],
])('%s', (_, text, format) => {
  expect(recogniseFormat(text)).toBe(format);
});

it('the demo syllabus is an outline', () => {
  expect(recogniseFormat(readFileSync('tests/tools/demo/syllabus.txt', 'utf8'))).toBe('outline');
});

it('a plain outline reads the same as an outline and as Markdown', () => {
  const text = '1 Waves\n2 Tides\n3 Ice';
  const [outline, markdown] = TEXT_FORMATS.map((format) =>
    format === 'case' ? null : readText(text, format),
  );
  expect(markdown?.rows.map(({ text: words }) => words)).toEqual(
    outline?.rows.map(({ text: words }) => words),
  );
});

const piece = fc.oneof(
  fc.constantFrom(
    ...[
      '\n',
      '\r\n',
      '\t',
      ',',
      ';',
      '"',
      '# ',
      '- ',
      '1. ',
      '1.1',
      'Code,Topic,Parent\n',
      '```',
      '<a>',
      '&amp;',
      '|',
    ],
    ...[
      '{"CFItems":[',
      '{"fullStatement":"x"},',
      ']}',
      '(HL only)',
      '12 marks',
      '---',
      'Waves',
      'state the ',
    ],
  ),
  fc.string({ unit: 'binary', maxLength: 6 }),
);
it.each(TEXT_FORMATS)(
  'whatever the text, read as %s it gives rows that never jump a level, or a message',
  (format) => {
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 40 }), (pieces) => {
        const text = pieces.join('');
        expect(TEXT_FORMATS).toContain(recogniseFormat(text));
        let reading;
        try {
          reading = readText(text, format);
        } catch (error) {
          expect(error).toBeInstanceOf(StudentError);
          return;
        }
        expect(reading.rows.length).toBeGreaterThan(0);
        expect(normaliseRows(reading.rows)).toEqual(reading.rows);
        for (const { text: words, code, line } of reading.rows) {
          expect(words).not.toBe('');
          expect(code.length).toBeLessThanOrEqual(LONGEST.code);
          expect(line).toBeGreaterThan(0);
        }
      }),
      { numRuns: 400 },
    );
  },
);

it('a package of items that stand anywhere is read whole', () => {
  const codes = fc.constantFrom('1', '2', '3', '4', '5', '6');
  fc.assert(
    fc.property(
      fc.uniqueArray(codes, { minLength: 1 }),
      fc.array(codes, { minLength: 6, maxLength: 6 }),
      (all, parents) => {
        const items = all.map((code, i) => ({ code, text: `Wave ${code}`, parent: parents[i] ?? null }));
        const { rows } = readText(JSON.stringify(aPackage(items)), 'case');
        expect(rows.map(({ code }) => code).sort()).toEqual(all.toSorted());
      },
    ),
  );
});
