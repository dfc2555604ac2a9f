// @vitest-environment jsdom
// @vitest-environment-options {"url": "http://127.0.0.1/desk.html"}
import { screen, waitFor } from '@testing-library/preact';
import { expect, test } from 'vitest';
import { aLine, anAttempt, aQuestion } from '../../builders.ts';
import { course, courseRows, deep, shallow, tides, waves } from '../a-course.ts';
import { freshScreens, openDesk } from '../render-in-deck.tsx';
import { choose, key, press, read, see } from '../student.ts';

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

test('the desk offers every choice, and a round as it was chosen', async () => {
  const db = await openDesk('round', rows);
  await choose('What to recall', '1 Waves at sea');
  await choose('Order', 'Back to front');
  await choose('Length of a round', '20 minutes');
  await read('2 items to choose from.');
  await press('Start a 20-minute round');
  await read('20:00');
  // In the notes lines come before questions, and 1.1 before 1.2.
  await read('Shallow-water speed');
  key('Enter');
  await see('group', 'How many marks?');
  key('f');
  await waitFor(async () => expect(await db.count('attempts')).toBe(1));
  await read('State the dispersion relation.');
});

test('a scope with nothing in it says so and starts nothing', async () => {
  await openDesk('round', rows);
  await choose('What to recall', 'What is marked unclear');
  await read('Nothing here to recall.');
  expect((await see('button', /^Start/)) as HTMLButtonElement).toMatchObject({ disabled: true });
});

test('weak topics are named with what is to be expected of them', async () => {
  // Tides were answered in full on five days up to yesterday.
  const attempts = [5, 4, 3, 2, 1].map((back) =>
    anAttempt({
      courseId: course.id,
      topicId: tides.id,
      itemKind: 'line',
      itemId: spring.id,
      at: Date.now() - back * 86_400_000,
    }),
  );
  await openDesk('round', { ...rows, attempts });
  await choose('What to recall', 'Weak topics');
  await read(/^2 topics are expected to bring a smaller part .*1\.1 Deep water \(\d+%\); 1\.2 Shallow water/);
  await read('2 items to choose from.');
});

test('what ten minutes now would gain, and the attempts of the last four weeks', async () => {
  const attempts = [1, 1, 9, 40].map((back) =>
    anAttempt({ courseId: course.id, itemId: question.id, at: Date.now() - back * 86_400_000 }),
  );
  await openDesk('round', { ...rows, attempts });
  const gain = (await read(/^10 minutes now: about \+[\d.]+ marks of 100 on exam day, mostly in 2 Tides\.$/))
    .textContent!;
  expect(Number(/\+([\d.]+)/.exec(gain)![1])).toBeGreaterThan(1);
  const chart = await see('img', '3 attempts in the last four weeks; days with some: 2; today: 0.');
  expect(chart.querySelectorAll('rect')).toHaveLength(28);
});
