// @vitest-environment jsdom
import { screen } from '@testing-library/preact';
import { expect, test } from 'vitest';
import { turned } from '#lib/recall/directions.ts';
import { changeLine, changeQuestion } from '#lib/store/actions/items.ts';
import { deleteRow } from '#lib/store/set-aside.ts';
import { MORNING } from '../../builders.ts';
import { freshScreens } from '../render-in-deck.tsx';
import { key, read, see } from '../student.ts';
import { DISPERSION, FURTHER, runRound, SPEED, SPRING } from './round-in-deck.tsx';

freshScreens();

const uncover = async () => {
  await see('button', /^Uncover/);
  key('Enter');
  await see('group', 'How many marks?');
};

test('every item says why it is asked, in numbers', async () => {
  await runRound([DISPERSION, SPRING]);
  for (const asks of [DISPERSION.asks, SPRING.asks]) {
    await read(asks);
    await read(/^It stands for 6.7 of 100 exam marks\. .* from 41 % to 73 %/);
    await uncover();
    key('f');
  }
});

test('an item that was changed elsewhere is asked as it is by now', async () => {
  const { db } = await runRound([DISPERSION, SPEED, ...FURTHER]);
  await read(DISPERSION.asks);
  await changeQuestion(db, SPEED.id, { prompt: 'How fast are long waves?', marks: 1 }, MORNING);
  await changeQuestion(db, DISPERSION.id, { answer: 'ω² = gk, for short' }, MORNING);
  await read('This was changed just now, elsewhere. It is asked as it is by now.');
  await uncover();
  await read('ω² = gk, for short');
  key('f');
  await read('How fast are long waves?');
  expect(screen.queryByText(/^This was changed/)).toBeNull();
});

test('an item that is changed once uncovered can be given the marks that there are by now', async () => {
  const { db } = await runRound([DISPERSION, SPRING]);
  await uncover();
  await changeQuestion(db, DISPERSION.id, { marks: 3 }, MORNING);
  await see('button', 'Full: 3 of 3');
  key('2');
  await read('Spring tides');
  expect(await db.getAll('attempts')).toMatchObject([{ marks: 2, outOf: 3 }]);
});

test('items deleted elsewhere are left out, with a word where one was in hand', async () => {
  const { db } = await runRound([DISPERSION, SPEED, SPRING]);
  await read(DISPERSION.asks);
  await deleteRow(db, 'questions', SPEED.id, MORNING);
  expect(screen.queryByText(/deleted just now/)).toBeNull();
  await deleteRow(db, 'questions', DISPERSION.id, MORNING);
  await read('What was in hand was deleted just now, elsewhere. It is left out.');
  await read('Spring tides');
  await uncover();
  key('f');
  await see('heading', '1 of 1 marks');
  expect(await db.getAll('attempts')).toMatchObject([{ itemId: SPRING.id }]);
});

test('when the last item is deleted the round ends', async () => {
  const { db } = await runRound([SPRING]);
  await read('Spring tides');
  await deleteRow(db, 'lines', SPRING.id, MORNING);
  await see('heading', 'Nothing marked this time');
});

test('a question is asked from the answer’s side, also once it was changed', async () => {
  const { db } = await runRound([DISPERSION, SPRING], 2, [DISPERSION]);
  await read(turned(DISPERSION).asks);
  await read("From the answer's side: what does this answer?");
  expect(screen.queryByText(DISPERSION.asks)).toBeNull();
  await changeQuestion(db, DISPERSION.id, { answer: 'ω squared is gk' }, MORNING);
  await read('ω squared is gk');
  await uncover();
  await read(DISPERSION.asks);
  key('f');
  await read('Spring tides');
  expect(screen.queryByText(/^From the answer's side/)).toBeNull();
});

test('a line that is changed half uncovered goes on in its new words', async () => {
  const { db } = await runRound([SPRING]);
  await see('group', 'The rest of the line, covered');
  key(' ');
  await read(/^come/);
  await changeLine(db, SPRING.id, { rest: 'come twice a month' }, MORNING);
  await read(/3 steps covered/);
});
