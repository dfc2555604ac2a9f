// @vitest-environment jsdom
// @vitest-environment-options {"url": "http://127.0.0.1/desk.html"}
import { screen, waitFor } from '@testing-library/preact';
import { expect, test } from 'vitest';
import { aLine, aQuestion } from '../../builders.ts';
import { course, courseRows, deep, shallow, tides, waves } from '../a-course.ts';
import { freshScreens, openDesk } from '../render-in-deck.tsx';
import { key, press, read, see } from '../student.ts';

freshScreens();

const question = aQuestion({
  courseId: course.id,
  topicId: deep.id,
  prompt: 'State the dispersion relation.',
});
const line = aLine({ courseId: course.id, topicId: shallow.id, lead: 'Shallow-water speed' });
const spring = aLine({ courseId: course.id, topicId: tides.id, lead: 'Spring tides' });
const rows = courseRows({ questions: [question], lines: [line, spring] });

test.each([
  ['round', 'Recall', '3 items to choose from.'],
  [`round/${waves.id}`, 'Recall: 1 Waves at sea', '2 items to choose from.'],
  [`round/${tides.id}`, 'Recall: 2 Tides', '1 item to choose from.'],
])('%s is over what stands there and below, and says why', async (path, heading, count) => {
  await openDesk(path, rows);
  await see('heading', heading);
  await read(count);
  await read(/^It stands for \d+ of 100 exam marks\./);
});

test('a round on a topic asks that topic alone, and its attempts do not disturb it', async () => {
  const db = await openDesk(`round/${waves.id}`, rows);
  await press('Start a 2-minute round');
  for (let i = 0; i < 2; i++) {
    await screen.findByLabelText(/^Answer in your mind/);
    expect(screen.queryByText('Spring tides')).toBeNull();
    key('Enter');
    await see('group', 'How many marks?');
    key('f');
    await waitFor(async () => expect(await db.count('attempts')).toBe(i + 1));
  }
  await see('heading', '2 of 2 marks');
  expect((await db.getAll('attempts')).map(({ itemId }) => itemId).sort()).toEqual(
    [question.id, line.id].sort(),
  );
});

test('what fell short leads to its page in the same tab', async () => {
  await openDesk(`round/${tides.id}`, rows);
  await press('Start a 2-minute round');
  await screen.findByLabelText(/^Answer in your mind/);
  key('Enter');
  await see('group', 'How many marks?');
  key('n');
  await press('Spring tides', 'link');
  await see('heading', '2 Tides');
});

test('another round begins with what gains most then', async () => {
  await openDesk('round', rows);
  await press('Start a 2-minute round');
  await press('Stop here');
  await press('Another round');
  await see('region', 'Recall round');
  await read('2:00');
});

test('with nothing to ask it leads to where a question is written', async () => {
  await openDesk(`round/${tides.id}`, courseRows());
  await read(/^Nothing to recall yet\./);
  await press('To the topic', 'link');
  await see('heading', '2 Tides');
});

test('with nothing in the whole course it leads to the clips', async () => {
  await openDesk('round', courseRows());
  await read(/^Nothing to recall yet\./);
  expect((await screen.findAllByRole('link', { name: 'Clips' })).at(-1)!.className).toBe('button');
});
