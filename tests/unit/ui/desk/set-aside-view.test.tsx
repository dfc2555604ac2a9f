// @vitest-environment jsdom
import { screen, waitFor, within } from '@testing-library/preact';
import { expect, test } from 'vitest';
import type { SetAside } from '#lib/model/set-aside.ts';
import { aQuestion, MORNING } from '../../builders.ts';
import { clipOf, course, courseRows, tides } from '../a-course.ts';
import { freshScreens, openDesk } from '../render-in-deck.tsx';
import { follow, press, read, see } from '../student.ts';

freshScreens();

const aside = (row: { id: string }, store = 'questions', over: Partial<SetAside> = {}): SetAside => ({
  store,
  row,
  why: 'deleted',
  problem: '',
  at: MORNING,
  ...over,
});
const question = aQuestion({ courseId: course.id, topicId: tides.id, prompt: 'When do neap tides come?' });
const cards = async () => {
  await see('heading', 'Set aside');
  return within(screen.getByRole('main')).getAllByRole('listitem');
};

test('what was deleted is put back, and is gone from here', async () => {
  const db = await openDesk('aside', courseRows({ setAside: [aside(question)] }));
  const [card] = await cards();
  expect(card!.textContent).toContain('When do neap tides come?deleted · ');
  await press('Put back');
  await read('Nothing has been set aside.');
  expect(await db.getAll('questions')).toEqual([question]);
  expect(await db.count('setAside')).toBe(0);
});

test('the newest stands first, and one is put back without the others', async () => {
  const clip = clipOf({ text: 'Pressure grows with depth: dp/dz = −ρg.' });
  const db = await openDesk('aside', courseRows({ setAside: [aside(question), aside(clip, 'clips')] }));
  const [first] = await cards();
  expect(first!.textContent).toContain('Pressure grows with depth');
  within(first!).getByRole('button', { name: 'Put back' }).click();
  await waitFor(async () => expect(await cards()).toHaveLength(1));
  expect(await db.getAll('clips')).toEqual([clip]);
  expect(await db.getAll('setAside')).toMatchObject([{ row: question }]);
});

test('what could not be read stays when it still cannot, and nothing of it is lost', async () => {
  const row = { ...question, marks: 'many' };
  const unreadable = aside(row, 'questions', { why: 'unreadable', problem: 'marks: expected number' });
  const db = await openDesk('aside', courseRows({ setAside: [unreadable] }));
  await read(/^could not be read, from: questions/);
  await read(/marks: expected number/);
  await press('Put back');
  expect((await see('alert')).textContent).toMatch(/^This entry still cannot be read/);
  expect(await db.getAll('setAside')).toEqual([unreadable]);
  expect(await db.count('questions')).toBe(0);
});

test('what could not be read and now can is put back', async () => {
  const setAside = [aside(question, 'questions', { why: 'unreadable', problem: 'prompt: too long' })];
  const db = await openDesk('aside', courseRows({ setAside }));
  await press('Put back');
  await read('Nothing has been set aside.');
  expect(await db.getAll('questions')).toEqual([question]);
});

test('an entry of a store that is no more stays', async () => {
  const db = await openDesk('aside', courseRows({ setAside: [aside(question, 'sketches')] }));
  await press('Put back');
  await see('alert');
  expect(await db.count('setAside')).toBe(1);
});

test('the desk says on every page that something could not be read, and leads here', async () => {
  const bad = { ...question, marks: 'many' } as never;
  const db = await openDesk('coverage', courseRows({ questions: [bad] }));
  await read(/^1 entry of your deck could not be read\./);
  expect(await db.getAll('setAside')).toMatchObject([{ why: 'unreadable', row: bad }]);
  await follow('Look at it');
  await see('heading', 'Set aside');
  expect(screen.queryByText(/entry of your deck could not be read\./)).toBeNull();
  await follow('Back to the coverage');
  await see('heading', 'Coverage');
});

test('what was deleted by the student is no trouble on the other pages', async () => {
  await openDesk('coverage', courseRows({ setAside: [aside(question)] }));
  await see('table');
  expect(screen.queryByText(/could not be read/)).toBeNull();
});
