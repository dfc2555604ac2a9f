import { beforeEach, expect, test } from 'vitest';
import type { Ranked } from '#lib/recall/next-item.ts';
import { itemOfQuestion } from '#lib/model/item.ts';
import { reasonOf, whySentence } from '#lib/ui/derive/why.ts';
import { aQuestion, aReason, MORNING } from '../../builders.ts';
import { fakeExtension } from '../fake-extension.ts';

beforeEach(() => fakeExtension());

const DAY_MS = 86_400_000;

test('before an exam the sentence speaks of its day, with rounded numbers', () => {
  expect(whySentence(aReason(), MORNING)).toBe(
    'It stands for 6.7 of 100 exam marks. Your chance of full marks on exam day ' +
      '(days to go: 49) would go from 41 % to 73 % for about 12 seconds of work.',
  );
});

test('numbers that were kept some days ago count the days from now', () => {
  expect(whySentence(aReason(), MORNING + 3 * DAY_MS)).toContain('days to go: 46');
  expect(whySentence(aReason(), MORNING + 60 * DAY_MS)).toContain('days to go: 0');
});

test('without an exam day it looks ahead and says how to aim', () => {
  expect(whySentence(aReason({ isForExam: false, aimAt: MORNING + 30 * DAY_MS }), MORNING)).toBe(
    'It stands for 6.7 of 100 exam marks. Your chance of full marks later on ' +
      '(days ahead: 30) would go from 41 % to 73 % for about 12 seconds of work. Set the exam day to aim at it.',
  );
});

test.each([
  ['the same when rounded', 0.951, 0.954, 'is 95 %'],
  ['lower, as it is better left for later', 0.95, 0.9, 'is 95 %'],
])('where the chance would be %s, no gain is claimed', (_how, chanceIfLeft, chanceIfAsked, words) => {
  for (const isForExam of [true, false]) {
    const sentence = whySentence(aReason({ chanceIfLeft, chanceIfAsked, isForExam }), MORNING);
    expect(sentence).toContain(words);
    expect(sentence).not.toContain('would go');
  }
});

test('what is kept of a ranking is what the sentence needs', () => {
  const ranked: Ranked = {
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
    },
  };
  expect(reasonOf(ranked, MORNING)).toEqual(aReason());
});
