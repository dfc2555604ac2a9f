import fc from 'fast-check';
import { expect, it, test } from 'vitest';
import { fitWords } from '#lib/ui/desk/coverage/fit-words.ts';

it.each([
  ['1.1 Salinity', 20, 2, ['1.1 Salinity']],
  ['1.1 Salinity and composition', 12, 3, ['1.1 Salinity', 'and', 'composition']],
  ['1.1 Salinity and composition', 12, 2, ['1.1 Salinity', 'and…']],
  ['1.1 Salinity and composition', 4, 3, ['1.1…']],
  ['1.1 Salinity and composition', 3, 3, []],
  ['Salinity', 4, 3, []],
  ['Salinity', 20, 0, []],
  ['', 20, 2, []],
])('%j in lines of %i, %i of them', (words, letters, lines, fitted) => {
  expect(fitWords(words, letters, lines)).toEqual(fitted);
});

test('no line is too long, and none but the last is cut', () => {
  fc.assert(
    fc.property(fc.lorem({ maxCount: 9 }), fc.nat(30), fc.nat(5), (words, letters, lines) => {
      const fitted = fitWords(words, letters, lines);
      expect(fitted.length).toBeLessThanOrEqual(lines);
      for (const line of fitted) expect(line.length).toBeLessThanOrEqual(letters);
      expect(words.startsWith(fitted.join(' ').replace(/…$/, ''))).toBe(true);
    }),
  );
});
