import fc from 'fast-check';
import { expect, test } from 'vitest';
import { COPIED_RUN, copiedFrom, isOwn } from '#lib/notes/copied.ts';

const PASSAGE =
  'In deep water the speed of a wave grows with the square root of its wavelength, so that long waves outrun short ones.';

test('the whole passage again is a copy, however it is typed', () => {
  expect(copiedFrom(PASSAGE, PASSAGE).part).toBe(1);
  const shouted = PASSAGE.toUpperCase().replace(/,/g, ' -').replace(/ /g, '\n');
  expect(copiedFrom(PASSAGE, shouted)).toEqual({ runs: [{ from: 0, to: shouted.length - 1 }], part: 1 });
  expect(isOwn(PASSAGE, PASSAGE)).toBe(false);
});

test('a run within own words is found where it stands', () => {
  const own = 'My version: long waves win, since the speed of a wave grows with the square root, they say.';
  const { runs, part } = copiedFrom(PASSAGE, own);
  expect(runs.map(({ from, to }) => own.slice(from, to))).toEqual([
    'the speed of a wave grows with the square root',
  ]);
  expect(part).toBeCloseTo(10 / 18, 10);
});

test('words that all would use are nobody’s copy', () => {
  const own = 'Long waves are the faster ones in deep water: four times the length, twice the speed.';
  expect(copiedFrom(PASSAGE, own)).toEqual({ runs: [], part: 0 });
  expect(isOwn(PASSAGE, own)).toBe(true);
  expect(isOwn(PASSAGE, 'long waves')).toBe(true);
  expect(isOwn(PASSAGE, '  \n')).toBe(false);
});

test('a short phrase of the passage and nothing else is a copy', () => {
  expect(copiedFrom(PASSAGE, 'long waves outrun short ones').part).toBe(1);
});

test('a formula is the same in anybody’s words', () => {
  const passage = String.raw`The phase speed is \(c = \sqrt{g h} + a + b + d + e + f + g + h\) near the shore.`;
  const own = String.raw`near a beach: \(c = \sqrt{g h} + a + b + d + e + f + g + h\), depth alone decides`;
  expect(copiedFrom(passage, own)).toEqual({ runs: [], part: 0 });
});

test('runs are runs of the passage, in order and apart, and the longer the copy the larger its part', () => {
  const word = fc.constantFrom('sea', 'salt', 'wave', 'tide', 'deep', 'ß', 'é', '流');
  const text = fc.array(word, { maxLength: 40 }).map((words) => words.join(' '));
  fc.assert(
    fc.property(text, text, (passage, own) => {
      const { runs, part } = copiedFrom(passage, own);
      let end = -1;
      let words = 0;
      for (const { from, to } of runs) {
        expect(from).toBeGreaterThan(end);
        expect(` ${passage} `).toContain(` ${own.slice(from, to)} `);
        words += own.slice(from, to).split(' ').length;
        end = to;
      }
      expect(part * own.split(' ').length).toBeCloseTo(own === '' ? 0 : words, 6);
      // Nothing long enough was missed.
      const gaps = runs.reduceRight((left, { from, to }) => `${left.slice(0, from)}|${left.slice(to)}`, own);
      for (const gap of gaps.split('|').map((part) => part.trim().split(' ').filter(Boolean)))
        for (let i = 0; i + COPIED_RUN <= gap.length; i++)
          expect(` ${passage} `).not.toContain(` ${gap.slice(i, i + COPIED_RUN).join(' ')} `);
    }),
    { numRuns: 500 },
  );
});
