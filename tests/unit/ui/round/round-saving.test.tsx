// @vitest-environment jsdom
import { screen } from '@testing-library/preact';
import { expect, test, vi } from 'vitest';
import { StudentError } from '#lib/model/student-error.ts';
import * as attempts from '#lib/store/actions/attempts.ts';
import { freshScreens } from '../render-in-deck.tsx';
import { key, press, read, see, type } from '../student.ts';
import { clip, DISPERSION, runRound, SPRING } from './round-in-deck.tsx';

vi.mock('#lib/store/actions/attempts.ts', { spy: true });
freshScreens();

const ANSWER = 'Answer in your mind, or type it here';
const uncover = async () => {
  await screen.findByLabelText(ANSWER);
  key('Enter');
  await see('group', 'How many marks?');
};

test('the next item is shown only once the attempt is on disk', async () => {
  const { promise, resolve: save } = Promise.withResolvers<undefined>();
  const writing = vi.mocked(attempts.recordAttempt).mockReturnValueOnce(promise);
  await runRound([DISPERSION, SPRING]);
  await uncover();
  key('f');
  await vi.waitFor(() => expect(writing).toHaveBeenCalledTimes(1));
  expect(screen.queryByText('Spring tides')).toBeNull();
  await read(DISPERSION.covers);
  save(undefined);
  await read('Spring tides');
});

test('when saving fails the item stays with what was typed, and its marks can be given again', async () => {
  vi.mocked(attempts.recordAttempt).mockRejectedValueOnce(new StudentError('errorStorageFull'));
  const { db } = await runRound([DISPERSION, SPRING]);
  await type(ANSWER, 'ω² = gk tanh kh');
  await uncover();
  key('p');
  expect((await see('alert')).textContent).toMatch(/^The disk is full/);
  await read('ω² = gk tanh kh');
  await read(DISPERSION.covers);
  expect(await db.count('attempts')).toBe(0);
  await press('Part P');
  await read('Spring tides');
  expect(screen.queryByRole('alert')).toBeNull();
  expect(await db.getAll('attempts')).toMatchObject([{ marks: 0.5, typed: 'ω² = gk tanh kh' }]);
});

test('a round can be stopped at any time: what was marked is kept, what was not is not asked for', async () => {
  const { db, again } = await runRound([DISPERSION, SPRING]);
  await uncover();
  key('n');
  await read('Spring tides');
  await press('Stop here');
  await see('heading', '0 of 1 marks');
  expect(await db.count('attempts')).toBe(1);
  const reopen = screen.getByRole('link', { name: DISPERSION.asks });
  expect(reopen.getAttribute('href')).toBe(`#/clip/${clip.id}`);
  await press('Another round');
  expect(again).toHaveBeenCalledTimes(1);
});

test('a round without a mark says so, and the focus goes to its end', async () => {
  await runRound([DISPERSION]);
  await press('Stop here');
  expect(document.activeElement).toBe(await see('heading', 'Nothing marked this time'));
  expect(screen.queryByRole('table')).toBeNull();
});

test('at the end the marks stand by topic, and what fell short leads to its clip or topic', async () => {
  await runRound([DISPERSION, SPRING]);
  await uncover();
  key('f');
  await read('Spring tides');
  await uncover();
  key('p');
  await see('heading', '1.5 of 2 marks');
  const rows = screen.getAllByRole('row').map(({ textContent }) => textContent);
  expect(rows).toEqual(['Deep water1 of 1', 'Tides0.5 of 1']);
  const links = screen.getAllByRole('link').map((link) => [link.textContent, link.getAttribute('href')]);
  expect(links).toEqual([['Spring tides', `#/topic/${SPRING.topicId}`]]);
});

test('when time is up the item in hand is the last one', async () => {
  vi.useFakeTimers({ toFake: ['Date'] });
  const { db } = await runRound([DISPERSION, SPRING], 1);
  await read('1:00');
  vi.setSystemTime(Date.now() + 61_000);
  await read('Time is up: this is the last one.');
  await read('0:00');
  await uncover();
  key('f');
  await see('heading', '1 of 1 marks');
  expect((await db.getAll('attempts'))[0]!.seconds).toBeGreaterThanOrEqual(61);
  vi.useRealTimers();
});
