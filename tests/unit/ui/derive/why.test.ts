import { beforeEach, expect, test } from 'vitest';
import type { Ranked } from '#lib/recall/next-item.ts';
import { itemOfQuestion } from '#lib/model/item.ts';
import { whySentence } from '#lib/ui/derive/why.ts';
import { aQuestion } from '../../builders.ts';
import { fakeExtension } from '../fake-extension.ts';

beforeEach(() => fakeExtension());

const ranked = (over: Partial<Ranked['why']> = {}): Ranked => ({
  item: itemOfQuestion(aQuestion()),
  gain: 0.1,
  chanceNow: 0.9,
  chanceExamNow: 0.4149,
  chanceExamAfter: 0.7251,
  why: {
    examMarks: 6.666,
    chanceAdded: 0.3102,
    seconds: 11.6,
    daysAhead: 48.9,
    isForExam: true,
    attempts: 2,
    daysSince: 3,
    waited: 1.7,
    laterTurn: { ifAsked: 1, ifLeft: 1 },
    ...over,
  },
});

test('before an exam the sentence speaks of its day, with rounded numbers', () => {
  expect(whySentence(ranked())).toBe(
    'It stands for 6.7 of 100 exam marks. Your chance of full marks on exam day ' +
      '(days to go: 49) would go from 41 % to 73 % for about 12 seconds of work.',
  );
});

test('without an exam day it looks ahead and says how to aim', () => {
  expect(whySentence(ranked({ isForExam: false, daysAhead: 30 }))).toBe(
    'It stands for 6.7 of 100 exam marks. Your chance of full marks later on ' +
      '(days ahead: 30) would go from 41 % to 73 % for about 12 seconds of work. Set the exam day to aim at it.',
  );
});
