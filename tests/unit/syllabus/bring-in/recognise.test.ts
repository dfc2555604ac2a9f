import { expect, it } from 'vitest';
import { readFileSync } from 'node:fs';
import { TEXT_FORMATS, readText, recogniseFormat } from '#lib/syllabus/bring-in/read-text.ts';
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
