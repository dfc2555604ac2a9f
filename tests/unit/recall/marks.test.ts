import { expect, it } from 'vitest';
import { choicesOf, isChoice } from '#lib/recall/marks.ts';

it('marks one mark in full, in part or not at all', () => {
  expect(choicesOf(1)).toEqual([
    { marks: 1, judgement: 'full' },
    { marks: 0.5, judgement: 'part' },
    { marks: 0, judgement: 'none' },
  ]);
});

it('marks several in whole marks', () => {
  expect(choicesOf(3)).toEqual([
    { marks: 3, judgement: 'full' },
    { marks: 2, judgement: 'part' },
    { marks: 1, judgement: 'part' },
    { marks: 0, judgement: 'none' },
  ]);
});

it('knows which marks can be given', () => {
  expect(isChoice(0.5, 1)).toBe(true);
  expect(isChoice(0.5, 2)).toBe(false);
  expect(isChoice(3, 2)).toBe(false);
  expect(isChoice(NaN, 2)).toBe(false);
});

it.each([0, -1, 1.5, NaN])('refuses to mark out of %s', (outOf) => {
  expect(() => choicesOf(outOf)).toThrow(RangeError);
});
