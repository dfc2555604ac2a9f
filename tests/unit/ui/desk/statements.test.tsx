// @vitest-environment jsdom
import { screen, waitFor, within } from '@testing-library/preact';
import { expect, test } from 'vitest';
import { aQuestion, aStatement } from '../../builders.ts';
import { clipOf, course, courseRows, deep, tides } from '../a-course.ts';
import { freshScreens, openDesk } from '../render-in-deck.tsx';
import { press, read, see, type } from '../student.ts';

freshScreens();

const inDeep = { courseId: course.id, topicId: deep.id };
const state = aStatement({ ...inDeep, code: 'a', text: 'State the dispersion relation.' });
const sketch = aStatement({ ...inDeep, order: 1, code: 'b', text: 'Sketch the orbits.' });
const statements = [state, sketch];

test('on a clip’s page it is ticked what the clip explains, and what is written there is taken to be on that', async () => {
  const clip = clipOf();
  const db = await openDesk(`clip/${clip.id}`, courseRows({ clips: [clip], statements }));
  const boxes = within(await see('group', 'What of “1.1 Deep water” it explains'));
  boxes.getByRole('checkbox', { name: 'a State the dispersion relation.' }).click();
  await waitFor(async () => expect((await db.get('clips', clip.id))!.statementIds).toEqual([state.id]));
  expect(await screen.findAllByText('Statements it answers: 1 of 2')).toHaveLength(2);
  await type('Question', 'What is the dispersion relation?');
  await type('Answer', 'ω² = gk');
  await press('Add the question');
  await waitFor(async () =>
    expect(await db.getAll('questions')).toMatchObject([{ statementIds: [state.id] }]),
  );
  boxes.getByRole('checkbox', { name: 'a State the dispersion relation.' }).click();
  await waitFor(async () => expect((await db.get('clips', clip.id))!.statementIds).toEqual([]));
});

test('a clip without statements in its topics has no boxes', async () => {
  const clip = clipOf({ topicIds: [tides.id] });
  await openDesk(`clip/${clip.id}`, courseRows({ clips: [clip], statements }));
  await see('heading', 'Questions from this clip');
  expect(screen.queryByText(/^Statements it answers/)).toBeNull();
});

test('a topic’s page marks each statement by what answers it, and a question is ticked later', async () => {
  const clips = [clipOf({ statementIds: [state.id] })];
  const question = aQuestion({ ...inDeep, prompt: 'What do orbits look like?' });
  const db = await openDesk(`topic/${deep.id}`, courseRows({ clips, statements, questions: [question] }));
  await read('statements explained: 1 of 2');
  const marksOf = (text: string) =>
    within(screen.getByText(text).closest('li')!)
      .getAllByRole('listitem')
      .map(({ textContent }) => textContent!.trim());
  expect(marksOf('State the dispersion relation.')).toEqual([
    'explained by clips: 1 (partly there)',
    'asked by questions and lines: 0 (missing)',
  ]);
  await press('Change: What do orbits look like?');
  const form = within((await see('button', 'Leave as it was')).closest('form')!);
  form.getByRole('checkbox', { name: 'b Sketch the orbits.', hidden: true }).click();
  await form.findByText('Statements it answers: 1 of 2');
  form.getByRole('button', { name: 'Save' }).click();
  await waitFor(async () =>
    expect((await db.get('questions', question.id))!.statementIds).toEqual([sketch.id]),
  );
  await waitFor(() =>
    expect(marksOf('Sketch the orbits.').slice(1)).toEqual([
      'asked by questions and lines: 1',
      'recalled: 0 of 1 (missing)',
      'secured: 0 of 1 (missing)',
    ]),
  );
});

test('the coverage asks to tick what the clip explains, and leads to that clip', async () => {
  const clip = clipOf({ ownWords: 'Long ones win.' });
  await openDesk('coverage', courseRows({ clips: [clip], statements }));
  await press('Tick what your clip explains', 'link');
  await see('group', 'What of “1.1 Deep water” it explains');
});

test('with two gaps that aim, one button does it', async () => {
  const clip = clipOf({ ownWords: 'Long ones win.', statementIds: [state.id] });
  await openDesk(`topic/${deep.id}`, courseRows({ clips: [clip], statements }));
  await see('button', 'Aim a second explanation here');
  expect(screen.queryByRole('button', { name: 'Aim a clip at what is unexplained' })).toBeNull();
});
