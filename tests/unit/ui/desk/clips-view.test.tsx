// @vitest-environment jsdom
import { screen } from '@testing-library/preact';
import { expect, test } from 'vitest';
import { aQuestion, MORNING, newId } from '../../builders.ts';
import { clipOf, course, courseRows, deep, tides } from '../a-course.ts';
import { freshScreens, openDesk } from '../render-in-deck.tsx';
import { follow, press, read, see } from '../student.ts';

freshScreens();

const at = (hour: number) => ({ createdAt: MORNING + hour * 3_600_000 });
const dispersion = clipOf({ ...at(1), text: 'In deep water ω² = gk.', ownWords: 'Long ones win.' });
const bulges = clipOf({
  ...at(3),
  text: 'Two bulges of water.',
  topicIds: [deep.id, tides.id],
  unclear: true,
});
const pressure = clipOf({ ...at(2), text: 'Pressure grows with depth.', topicIds: [], ownWords: ' ' });
const clips = [dispersion, bulges, pressure];
const questions = [aQuestion({ courseId: course.id, topicId: deep.id, clipId: dispersion.id })];

const cards = () =>
  screen.getAllByRole('link').filter((link) => link.getAttribute('href')!.startsWith('#/clip/'));
const shown = () => cards().map(({ textContent }) => textContent);

test('clips stand newest first, each with its topics, its site and what was written from it', async () => {
  await openDesk('clips', courseRows({ clips, questions }));
  await see('heading', 'Clips');
  expect(shown()).toEqual(['Two bulges of water.', 'Pressure grows with depth.', 'In deep water ω² = gk.']);
  await read('1.1 Deep water, 2 Tides · The Lagoonery · 0 questions and lines · unclear');
  await read('1.1 Deep water · The Lagoonery · 1 question or line');
  await read('No topic yet · The Lagoonery · 0 questions and lines');
  await read('Long ones win.');
});

test.each([
  ['Unclear (1)', ['Two bulges of water.']],
  ['Without a topic (1)', ['Pressure grows with depth.']],
  ['Without own words (2)', ['Two bulges of water.', 'Pressure grows with depth.']],
])('“%s” shows those and no others', async (filter, texts) => {
  await openDesk('clips', courseRows({ clips }));
  await press(filter);
  expect(shown()).toEqual(texts);
  expect(screen.getByRole('button', { pressed: true }).textContent).toBe(filter);
  await press('All (3)');
  expect(shown()).toHaveLength(3);
});

test('a clip under a topic that is gone says so', async () => {
  await openDesk('clips', courseRows({ clips: [clipOf({ topicIds: [newId()] })] }));
  await read(/^a topic that is gone ·/);
});

test('without clips it says how to keep one', async () => {
  await openDesk('clips', courseRows());
  await read('Nothing kept yet.');
  await read(/select the explanation and press Alt\+K/);
  expect(screen.queryByRole('group')).toBeNull();
});

test('a clip leads to its page', async () => {
  await openDesk('clips', courseRows({ clips }));
  await follow('Two bulges of water.');
  await see('heading', 'Clip');
  expect((await see('region', 'The passage')).textContent).toBe('Long waves outrun short ones.');
});
