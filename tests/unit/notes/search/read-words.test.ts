import fc from 'fast-check';
import { expect, test } from 'vitest';
import { WordReader } from '#lib/notes/search/read-words.ts';
import { aText } from './documents.ts';

function wordsOf(text: string): string[] {
  const words: string[] = [];
  new WordReader().read(text, (word) => words.push(word));
  return words;
}

test.each([
  ['Long waves outrun short ones.', ['long', 'waves', 'outrun', 'short', 'ones']],
  ['The tide’s range', ['the', 'tide', 'range']],
  ['deep-water waves', ['deep', 'water', 'waves', 'deepwater']],
  ['x-y', ['x', 'y']],
  [String.raw`\(\omega^2 = g k\)`, ['omega', '2', 'g', 'k']],
  [String.raw`\(c = \sqrt{gh}\)`, ['c', 'sqrt', 'gh']],
  [String.raw`\(f_0\) and \mathrm{H_2O}`, ['f0', 'and', 'h2o']],
  ['ω²=gk, ωt', ['omega', '2', 'gk', 'omega', 't']],
  ['24.84 h, 9,81 m/s², 1,025 kg', ['24.84', 'h', '9.81', 'm', 's2', '1025', 'kg']],
  ['10µm and 10 μm', ['10', 'mu', 'm', 'and', '10', 'mu', 'm']],
  ['CO₂ H2O', ['co2', 'h2o']],
  ['θάλασσα и море', ['θαλασσα', 'и', 'море']],
  ['潮汐 tide', ['潮', '汐', 'tide']],
  ['مَدّ وجزر', ['مد', 'وجزر']],
  ['soft\u00adhyphen', ['softhyphen']],
  ['🌊 !?', ['🌊']],
  ['… — ()', []],
  ['', []],
])('the words of %j', (text, words) => {
  expect(wordsOf(text)).toEqual(words);
});

test('every word stands where it is said to stand, and reads the same there', () => {
  fc.assert(
    fc.property(aText, (text) => {
      const reader = new WordReader();
      let before = 0;
      reader.read(text, (word, start, end, isJoined) => {
        if (!isJoined) expect(start).toBeGreaterThanOrEqual(before);
        before = isJoined ? before : end;
        expect(start).toBeLessThan(end);
        expect(end).toBeLessThanOrEqual(text.length);
        const again: string[] = [];
        reader.read(text.slice(start, end), (one) => again.push(one));
        expect(again).toContain(word);
      });
    }),
  );
});

test('reading ends when it is told to', () => {
  const words: string[] = [];
  new WordReader().read('spring and neap', (word) => {
    words.push(word);
    return false;
  });
  expect(words).toEqual(['spring']);
});
