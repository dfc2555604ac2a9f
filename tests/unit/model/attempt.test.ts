import { expect, test } from 'vitest';
import { Attempt, judgementOf } from '#lib/model/attempt.ts';
import { anAttempt } from '../builders.ts';

test.each([
  [3, 3, 'full'],
  [2, 3, 'part'],
  [0.5, 1, 'part'],
  [0, 3, 'none'],
])('%f of %f marks is %s', (marks, outOf, judgement) => {
  expect(judgementOf({ marks, outOf })).toBe(judgement);
});

test.each([
  { marks: 2, outOf: 1 },
  { marks: 0.25 },
  { marks: -1 },
  { seconds: -1 },
  { outOf: 0, marks: 0 },
  { outOf: 21 },
  { itemId: 'it' },
])('an attempt with %o is refused', (wrong) => {
  expect(Attempt.safeParse(anAttempt(wrong)).success).toBe(false);
  expect(Attempt.safeParse(anAttempt()).success).toBe(true);
});
