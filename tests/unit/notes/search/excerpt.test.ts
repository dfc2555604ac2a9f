import fc from 'fast-check';
import { expect, test } from 'vitest';
import { excerptOf } from '#lib/notes/search/excerpt.ts';
import { WordReader } from '#lib/notes/search/read-words.ts';
import { SearchIndex } from '#lib/notes/search/search-index.ts';
import { NO_FILTER } from '#lib/notes/search/filter.ts';
import { aDocument, aText } from './documents.ts';

const reader = new WordReader();
const LITTLE = 'and so the water goes on and on until it meets the shore '.repeat(20);

const shown = (text: string, words: string[]) => {
  const excerpt = excerptOf(text, new Map(words.map((word, i) => [word, i])), reader);
  return {
    ...excerpt,
    text: text.slice(excerpt.from, excerpt.to),
    marked: excerpt.marks.map(({ from, to }) => text.slice(from, to)),
  };
};

test('a short text is shown whole, with its words marked as they are written', () => {
  const { text, marked } = shown('Spring tides: Éstuaires, ΩMEGA.', ['tides', 'estuaires']);
  expect(text).toBe('Spring tides: Éstuaires, ΩMEGA.');
  expect(marked).toEqual(['tides', 'Éstuaires']);
});

test('of a long text, the part with most of the words', () => {
  const { text, marked } = shown(`${LITTLE}neap ${LITTLE}spring tides and neap tides. ${LITTLE}`, [
    'spring',
    'neap',
    'tides',
  ]);
  expect(marked).toEqual(['spring', 'tides', 'neap', 'tides']);
  expect(text.length).toBeLessThan(260);
  expect(text).toMatch(/^\w+ .* \w+$/);
});

test('without any of the words, the beginning', () => {
  expect(shown(LITTLE, ['spring'])).toMatchObject({ from: 0, marks: [] });
});

test('a formula is marked, and stands in the excerpt, whole', () => {
  const formula = String.raw`\(c = \sqrt{g h}\)`;
  expect(shown(`Long waves travel at ${formula}.`, ['sqrt']).marked).toEqual([formula]);
  for (let before = 0; before < 60; before++) {
    const text = `${'x'.repeat(before)} ${LITTLE.slice(0, 130)} tide ${LITTLE.slice(0, 90)} ${formula} ${formula} ${LITTLE}`;
    const part = shown(text, ['tide']).text;
    expect(part.split('\\(').length).toBe(part.split('\\)').length);
  }
});

test('a very long text without spaces is cut all the same', () => {
  const { text, marked } = shown(`${'潮'.repeat(5000)}a${'潮'.repeat(5000)}`, ['a']);
  expect(marked).toEqual(['a']);
  expect(text.length).toBeLessThan(260);
});

const hasWholeSigns = (text: string) => text.isWellFormed();

test('excerpts break no surrogate pair, and every mark is in the excerpt and one of the words', () => {
  const aLongText = fc.array(aText, { maxLength: 12 }).map((texts) => texts.join(' ').toWellFormed());
  fc.assert(
    fc.property(
      aLongText,
      fc.constantFrom('tide', 'wave spring', 'ω', '潮', '🌊', 'القمر', 'e'),
      (text, asked) => {
        const index = new SearchIndex();
        index.put(aDocument([text]));
        const { marked, count } = index.search(asked, NO_FILTER, 5);
        const { from, to, marks } = excerptOf(text, marked, index.reader);
        expect(hasWholeSigns(text.slice(from, to))).toBe(true);
        if (count > 0) expect(marks.length).toBeGreaterThan(0);
        let before = from;
        for (const mark of marks) {
          expect(mark.from).toBeGreaterThanOrEqual(before);
          expect(mark.to).toBeGreaterThan(mark.from);
          before = mark.to;
          const words: string[] = [];
          index.reader.read(text.slice(mark.from, mark.to), (word) => words.push(word));
          expect(words.some((word) => marked.has(word))).toBe(true);
        }
        expect(before).toBeLessThanOrEqual(to);
      },
    ),
    { numRuns: 300 },
  );
});
