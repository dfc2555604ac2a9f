// @vitest-environment jsdom
import { fireEvent, screen } from '@testing-library/preact';
import { beforeEach, expect, test } from 'vitest';
import { freshScreens } from '../render-in-deck.tsx';
import { key, press, read, see } from '../student.ts';
import { FURTHER, runRound, SPRING } from './round-in-deck.tsx';

freshScreens();
beforeEach(() => localStorage.clear());

const shown = async () =>
  (await see('group', 'The rest of the line, covered')).querySelector('p')!.textContent;
const focused = () => document.activeElement!.textContent!.trim();

test('a line shows its lead; Space uncovers the rest word by word', async () => {
  await runRound([SPRING]);
  await read('Spring tides');
  expect(await shown()).toBe('6 steps covered');
  key(' ');
  expect(await shown()).toBe('come 5 steps covered');
  await press(/^One more word/);
  expect(await shown()).toBe('come at 4 steps covered');
  key(' ');
  expect(await shown()).toBe('come at new 3 steps covered');
  expect(screen.queryByRole('group', { name: 'How many marks?' })).toBeNull();
});

test.each([
  [0, 'Full F', 'Nothing was uncovered as a help. Suggested: Full. You decide.', 1],
  [2, 'Part P', '2 of 6 steps were uncovered as a help. Suggested: Part. You decide.', 0.5],
  [6, 'None N', '6 of 6 steps were uncovered as a help. Suggested: None. You decide.', 0],
])('after %i steps Enter gives what is suggested: %s', async (steps, button, words, marks) => {
  const { db } = await runRound([SPRING, ...FURTHER]);
  await shown();
  for (let i = 0; i < steps; i++) key(' ');
  if (steps < 6) key('Enter');
  await read(words);
  expect(focused()).toBe(button);
  key('Enter');
  await read('Neap tides');
  expect(await db.getAll('attempts')).toMatchObject([{ itemId: SPRING.id, marks }]);
});

test('the student decides otherwise by a key', async () => {
  const { db } = await runRound([SPRING, ...FURTHER]);
  await shown();
  key('Enter');
  await read(/^Nothing was uncovered/);
  key('n');
  await read('Neap tides');
  expect(await db.getAll('attempts')).toMatchObject([{ marks: 0 }]);
});

test('by clause instead: the choice holds for the next line and the next round', async () => {
  const line = { ...SPRING, covers: 'come at new moon, and at full moon, twice a month' };
  await runRound([line, { ...line, id: FURTHER[0]!.id, asks: 'Once more' }]);
  await press('By clause instead');
  expect(await shown()).toBe('3 steps covered');
  key(' ');
  expect(await shown()).toBe('come at new moon, 2 steps covered');
  key('Enter');
  await read('1 of 3 steps were uncovered as a help. Suggested: Part. You decide.');
  key('f');
  await read('Once more');
  expect(await shown()).toBe('3 steps covered');
  expect(localStorage.getItem('stepSize')).toBe('clause');
});

test('a formula is one step', async () => {
  await runRound([{ ...SPRING, covers: String.raw`grows as \(\sqrt{g h} = c\), slowly` }]);
  expect(await shown()).toBe('4 steps covered');
});

test('a key held down neither uncovers twice nor marks', async () => {
  const { db } = await runRound([SPRING, ...FURTHER]);
  await shown();
  key(' ');
  key(' ', { repeat: true });
  expect(await shown()).toBe('come 5 steps covered');
  key('Enter');
  await read(/Suggested: Part/);
  key('Enter', { repeat: true });
  expect(await db.count('attempts')).toBe(0);
});

test('a line can be typed as well: Space belongs to the field then', async () => {
  await runRound([SPRING]);
  const field = await screen.findByLabelText('Answer in your mind, or type it here');
  field.focus();
  fireEvent.input(field, { target: { value: 'come at full and new moon' } });
  key(' ');
  expect(await shown()).toBe('6 steps covered');
  key('Enter');
  await read('Whether these are the same cannot be told by rule. Compare them yourself.');
  expect(document.querySelector('.suggested')).toBeNull();
});
