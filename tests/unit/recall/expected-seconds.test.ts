import { expect, it } from 'vitest';
import { expectedSeconds } from '#lib/recall/expected-seconds.ts';

const texts = (asks: number, covers: number) => ({ asks: 'a'.repeat(asks), covers: 'c'.repeat(covers) });

it('takes some 12 s for an item of 24 words of six characters', () => {
  expect(expectedSeconds(texts(60, 84), null)).toBeCloseTo(12, 0);
});

it('takes longer for longer texts', () => {
  expect(expectedSeconds(texts(60, 600), null)).toBeGreaterThan(expectedSeconds(texts(60, 84), null) + 20);
});

it("goes by the student's own seconds where there are any, within bounds", () => {
  expect(expectedSeconds(texts(60, 84), 31)).toBe(31);
  expect(expectedSeconds(texts(60, 84), 0)).toBe(2);
  expect(expectedSeconds(texts(60, 84), 80_000)).toBe(600);
  expect(expectedSeconds(texts(4000, 20_000), null)).toBe(600);
});
