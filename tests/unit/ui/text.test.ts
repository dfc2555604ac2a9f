import { beforeEach, expect, test } from 'vitest';
import { StudentError } from '#lib/model/student-error.ts';
import { t, tell, tn } from '#lib/ui/text.ts';
import { fakeExtension } from './fake-extension.ts';

beforeEach(() => fakeExtension());

test('a message has its values put in, numbers too', () => {
  expect(t('marksOf', 'Part', 2, 5)).toBe('Part: 2 of 5');
});

test.each([
  [0, '0 topics, 1 of 3 topics has nothing yet.'],
  [1, '1 topic, 1 of 3 topics has nothing yet.'],
  [2, '2 topics, 1 of 3 topics has nothing yet.'],
])('%i is counted in the form that fits it', (count, text) => {
  expect(`${tn('syllabusTopics', count)} ${tn('popupGaps', 1, 3)}`).toBe(text);
});

test('a plural takes further values after its number', () => {
  expect(tn('popupGaps', 2, 3)).toBe('2 of 3 topics have nothing yet.');
});

test('an error of the student is told in its own words, with its values', () => {
  expect(tell(new StudentError('errorFieldWrong', 'name', 'too short'))).toBe(
    'This was not saved: the field “name” is not right (too short).',
  );
});

test('an error without a message of its own is told as unexpected, by its name', () => {
  expect(tell(new StudentError('errorNobodyKnows'))).toContain('should not have: errorNobodyKnows.');
});

test.each([
  [new TypeError('no such thing'), 'no such thing'],
  ['just words', 'just words'],
  [undefined, 'undefined'],
])('anything else is told as unexpected, with what it says', (error, said) => {
  expect(tell(error)).toMatch(new RegExp(`should not have: ${said}\\. Nothing you saved is lost\\.`));
});
