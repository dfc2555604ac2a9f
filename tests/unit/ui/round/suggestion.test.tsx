// @vitest-environment jsdom
import { screen } from '@testing-library/preact';
import { expect, test } from 'vitest';
import { compareTyped } from '#lib/ui/round/compare-typed.ts';
import { freshScreens } from '../render-in-deck.tsx';
import { key, press, read, see, type } from '../student.ts';
import { DISPERSION, FURTHER, runRound } from './round-in-deck.tsx';

freshScreens();

const ANSWER = 'Answer in your mind, or type it here';
const asking = (covers: string, marks = 1) => ({ ...DISPERSION, covers, marks });
const answer = async (typed: string) => {
  await type(ANSWER, typed);
  key('Enter');
  await see('group', 'How many marks?');
};

test.each([
  ['9.8', '9.80', 'The same number. Suggested: Full. You decide.'],
  ['1.5 km', '1500 m', 'The same quantity in another unit. Suggested: Full. You decide.'],
  ['c = \\sqrt{g h}', '\\(c=\\sqrt{gh}\\)', 'The formula reads the same. Suggested: Full. You decide.'],
  ['SALT, heat', 'heat and salt', 'All 2 terms are there. Suggested: Full. You decide.'],
  ['heat', 'heat and salt', '1 of 2 terms are there. Suggested: Part. You decide.'],
])('%s for %s: %s', async (typed, covers, words) => {
  await runRound([asking(covers)]);
  await answer(typed);
  await read(words);
  const suggested = document.querySelectorAll('.suggested');
  expect(suggested).toHaveLength(1);
  expect(document.activeElement).toBe(suggested[0]);
});

test('when it cannot be told, both answers are there, nothing is chosen, and Enter gives nothing', async () => {
  const { db } = await runRound([asking('It is the wind.'), ...FURTHER]);
  await answer('Waves are raised by moving air');
  await read('Whether these are the same cannot be told by rule. Compare them yourself.');
  await read('It is the wind.');
  await read('Waves are raised by moving air');
  expect(document.querySelector('.suggested')).toBeNull();
  key('Enter');
  expect(await db.count('attempts')).toBe(0);
});

test('the student marks against the suggestion: that is what is kept', async () => {
  const { db } = await runRound([asking('9.80'), ...FURTHER]);
  await answer('9.8');
  await read(/^The same number/);
  await press('None N');
  await read('Neap tides');
  expect(await db.getAll('attempts')).toMatchObject([{ marks: 0, typed: '9.8' }]);
});

test('nothing typed: nothing is suggested', async () => {
  await runRound([asking('9.80')]);
  await screen.findByLabelText(ANSWER);
  key('Enter');
  await see('group', 'How many marks?');
  expect(
    screen.getByRole('group', { name: 'How many marks?' }).querySelector('[role=status]')!.textContent,
  ).toBe('');
});

test('an answer of 10,000 characters is kept whole; at 20,000 the student is told of the end', async () => {
  const { db } = await runRound([asking('The wind.'), ...FURTHER]);
  const long = 'waves and '.repeat(1000);
  await answer(long);
  await read(/^Whether these are the same/);
  key('n');
  await read('Neap tides');
  expect((await db.getAll('attempts'))[0]!.typed).toBe(long);
  await type(ANSWER, 'x'.repeat(20_000));
  await read('An answer holds 20,000 characters at most. What goes beyond that is not taken.');
});

test.each([
  ['words', 'waves and '.repeat(1000)],
  ['one word', 'w'.repeat(10_000)],
  ['figures', '1'.repeat(10_000)],
  ['spaces', `a${' '.repeat(9998)}b`],
  ['commas', 'a,'.repeat(5000)],
  ['brackets', '('.repeat(10_000)],
  ['TeX that is never closed', String.raw`\(`.repeat(5000)],
  ['dollars', '$'.repeat(10_000)],
])('10,000 characters of %s are compared without end or error', (_what, typed) => {
  for (const kept of ['The wind.', '9.8 m', String.raw`\(c = \sqrt{gh}\)`, 'heat, salt'])
    expect(compareTyped(typed, kept, 2).marks).toBeNull();
});
