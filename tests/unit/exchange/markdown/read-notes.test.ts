import { expect, test } from 'vitest';
import { readNotes } from '#lib/exchange/markdown/read-notes.ts';
import { aTopic } from '../../builders.ts';

const waves = aTopic({ order: 0, code: '1', title: 'Waves' });
const deep = aTopic({ order: 1, parentId: waves.id, code: '1.1', title: 'Deep water' });
const tides = aTopic({ order: 2, code: '2', title: 'Tides' });
const topics = [waves, deep, tides];
const linesIn = (text: string) => readNotes(text, topics).parts.flatMap(({ lines }) => lines);

test('headings of any Markdown lead to the topics of that code and title, or of that title', () => {
  const { parts, others } = readNotes(
    '# My notes\n\nSome prose.\n\n## DEEP  WATER\n\n- a\n\n# 2 Tides\n\n1. b\n2. c\n\n## Weather\n\n* d',
    topics,
  );
  expect(parts.map(({ heading, topicId, lines }) => [heading, topicId, lines.length])).toEqual([
    ['DEEP WATER', deep.id, 1],
    ['2 Tides', tides.id, 2],
    ['Weather', null, 1],
  ]);
  expect(others).toBe(1);
});

test.each([
  ['- **Swell**: waves from afar', 'Swell', 'waves from afar'],
  ['- **Swell:** waves from afar', 'Swell', 'waves from afar'],
  ['- **Swell** – waves *from* afar', 'Swell', 'waves from afar'],
  ['- Swell: waves from `afar`', 'Swell', 'waves from afar'],
  ['- Swell — waves [from](http://127.0.0.1) afar', 'Swell', 'waves from afar'],
  ['- Speed $c: d$: of waves', 'Speed \\(c: d\\)', 'of waves'],
  ['- A ratio of 1:2 is low', 'A ratio of 1:2 is low', ''],
  ['- costs $5 and $6', 'costs $5 and $6', ''],
  ['- one\n\n  two', 'one\ntwo', ''],
  ['- Law:\n\n  $$\n  a\n  $$', 'Law', '\\[a\\]'],
  ['- at $9.81$ and $$x$$', 'at \\(9.81\\) and \\[x\\]', ''],
  [`- ${'long '.repeat(20)}: rest`, `${'long '.repeat(20)}: rest`, ''],
])('%j from elsewhere is split where its lead ends', (text, lead, rest) => {
  expect(linesIn(text)).toEqual([{ lead, rest, depth: 0, pictureIds: [] }]);
});

test('items that are set in stand below the item above, at most five deep', () => {
  const text = Array.from({ length: 8 }, (_, i) => `${'  '.repeat(i)}- ${i}`).join('\n');
  expect(linesIn(text).map(({ depth }) => depth)).toEqual([0, 1, 2, 3, 4, 5, 5, 5]);
});

test('without a list, or with a line too long to keep, it says so', () => {
  expect(() => readNotes('Prose only.', topics)).toThrow('errorNotesNone');
  expect(() => readNotes('', topics)).toThrow('errorNotesNone');
  expect(() => readNotes('-', topics)).toThrow('errorNotesNone');
  expect(() => readNotes(`- ${'x'.repeat(20_001)}`, topics)).toThrow('errorNotesLineLong');
  expect(linesIn(`- ${'x'.repeat(20_000)}`)).toHaveLength(1);
});
