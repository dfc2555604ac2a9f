// @vitest-environment jsdom
import { fireEvent, screen } from '@testing-library/preact';
import { expect, test } from 'vitest';
import { freshScreens } from '../render-in-deck.tsx';
import { key, press, read, see, type } from '../student.ts';
import { DISPERSION, FURTHER, runRound, SPEED, SPRING } from './round-in-deck.tsx';

freshScreens();

const ANSWER = 'Answer in your mind, or type it here';
const uncover = async () => {
  await screen.findByLabelText(ANSWER);
  key('Enter');
  await see('group', 'How many marks?');
};
const offered = () =>
  screen
    .getAllByRole('button')
    .map(({ textContent }) => textContent!.trim())
    .filter((name) => name !== 'Stop here');

test('an item is asked with its topic, and its answer is nowhere until it is uncovered', async () => {
  await runRound([DISPERSION]);
  await read(DISPERSION.asks);
  await read('Deep water');
  expect(document.activeElement).toBe(await screen.findByLabelText(ANSWER));
  expect(document.body.textContent).not.toContain('ω² = gk');
  await press(/^Uncover/);
  await read('ω² = gk');
});

test('what was typed stands beside the answer; nothing typed, nothing beside it', async () => {
  await runRound([DISPERSION, SPRING]);
  await type(ANSWER, 'ω = √(gk)');
  await uncover();
  expect(screen.getByRole('heading', { name: 'Your answer' }).nextSibling!.textContent).toBe('ω = √(gk)');
  expect(screen.getByRole('heading', { name: 'The answer' }).nextSibling!.textContent).toBe('ω² = gk');
  key('f');
  await read('Spring tides');
  await uncover();
  expect(screen.queryByRole('heading', { name: 'Your answer' })).toBeNull();
});

test('Shift+Enter starts a new line and uncovers nothing', async () => {
  await runRound([DISPERSION]);
  await type(ANSWER, 'ω² is');
  key('Enter', { shiftKey: true });
  await Promise.resolve();
  expect(document.body.textContent).not.toContain('ω² = gk');
});

test('no mark is chosen for the student: Enter gives none', async () => {
  const { db } = await runRound([DISPERSION, SPRING]);
  await uncover();
  expect(document.activeElement).toBe(screen.getByRole('group', { name: 'How many marks?' }));
  expect(offered()).toEqual(['Full F', 'Part P', 'None N']);
  expect(screen.queryByRole('button', { pressed: true })).toBeNull();
  key('Enter');
  expect(await db.count('attempts')).toBe(0);
  await read('ω² = gk');
});

test.each([
  ['F', 1],
  ['f', 1],
  ['p', 0.5],
  ['N', 0],
])('the key %s gives %f of one mark', async (letter, marks) => {
  const { db } = await runRound([DISPERSION, SPRING]);
  await uncover();
  key(letter);
  await read('Spring tides');
  expect(await db.getAll('attempts')).toMatchObject([{ itemId: DISPERSION.id, marks, outOf: 1 }]);
});

test('several marks are given by their number', async () => {
  const { db } = await runRound([SPEED, SPRING]);
  await read('[3 marks]');
  await uncover();
  expect(offered()).toEqual(['Full: 3 of 3', 'Part: 2 of 3', 'Part: 1 of 3', 'None: 0 of 3']);
  for (const other of ['f', '4', 'x']) key(other);
  key('2');
  await read('Spring tides');
  expect(await db.getAll('attempts')).toMatchObject([{ itemId: SPEED.id, marks: 2, outOf: 3 }]);
});

test.each([
  ['with Ctrl', { ctrlKey: true }],
  ['with Alt', { altKey: true }],
  ['held down', { repeat: true }],
])('a key %s marks nothing', async (_how, init) => {
  const { db } = await runRound([DISPERSION, SPRING]);
  await uncover();
  key('f', init);
  await read('ω² = gk');
  expect(await db.count('attempts')).toBe(0);
});

test('marks by click; the attempt says what was typed, how long it took and in which round', async () => {
  const { db } = await runRound([DISPERSION, SPRING]);
  await type(ANSWER, 'ω² = gk');
  await uncover();
  await press('Part P');
  await read('Spring tides');
  await uncover();
  await press('Full F');
  await see('heading', '1.5 of 2 marks');
  const attempts = (await db.getAll('attempts')).sort((a, b) => a.at - b.at);
  expect(attempts.map(({ itemKind, typed }) => [itemKind, typed])).toEqual([
    ['question', 'ω² = gk'],
    ['line', ''],
  ]);
  expect(attempts[0]!.roundId).toBe(attempts[1]!.roundId);
  expect(attempts.every(({ seconds }) => seconds >= 0 && seconds < 60)).toBe(true);
});

test('a missed item returns after all others, says so, and counts as it went the first time', async () => {
  const others = [SPEED, SPRING, ...FURTHER];
  const { db } = await runRound([DISPERSION, ...others]);
  await uncover();
  key('n');
  for (const { asks, marks } of others) {
    await screen.findByText((text) => text.startsWith(asks));
    expect(screen.queryByText(/missed before/)).toBeNull();
    await uncover();
    key(marks > 1 ? String(marks) : 'f');
  }
  await read(DISPERSION.asks);
  await read('Deep water · missed before in this round');
  await uncover();
  key('f');
  await see('heading', '6 of 7 marks');
  await read('5 items, each counted as it went the first time.');
  const ofIt = (await db.getAll('attempts')).filter(({ itemId }) => itemId === DISPERSION.id);
  expect(ofIt.map(({ marks }) => marks).sort()).toEqual([0, 1]);
});

test('what was typed for one item is gone at the next', async () => {
  await runRound([DISPERSION, SPRING]);
  await type(ANSWER, 'ω² = gk');
  await uncover();
  key('f');
  await read('Spring tides');
  expect((await screen.findByLabelText<HTMLTextAreaElement>(ANSWER)).value).toBe('');
});

test('pressing a mark twice gives it once', async () => {
  const { db } = await runRound([DISPERSION, SPRING]);
  await uncover();
  const full = screen.getByRole('button', { name: 'Full F' });
  fireEvent.click(full);
  fireEvent.click(full);
  await read('Spring tides');
  expect(await db.count('attempts')).toBe(1);
});
