// @vitest-environment jsdom
import { screen, waitFor, within } from '@testing-library/preact';
import { describe, expect, test } from 'vitest';
import { aLine, aQuestion } from '../../builders.ts';
import { clipOf, course, courseRows, deep, tides } from '../a-course.ts';
import { freshScreens, openDesk, type Rows } from '../render-in-deck.tsx';
import { choose, key, press, read, see, type } from '../student.ts';

freshScreens();

const clip = clipOf({ topicIds: [deep.id, tides.id] });
const place = { courseId: course.id, topicId: deep.id, clipId: clip.id };
const question = aQuestion({ ...place, prompt: 'State the dispersion relation.', answer: 'ω² = gk' });
const line = aLine({ ...place, lead: 'Deep-water speed', rest: 'c = g/ω' });
const openClip = (rows: Rows = {}) => openDesk(`clip/${clip.id}`, courseRows({ clips: [clip], ...rows }));

/** The section under a heading: its fields have the names that those of the other section have, too. */
const section = async (name: string) => within((await see('heading', name)).closest('section')!);

test('questions are written one after another, each from the clip and for its topic', async () => {
  const db = await openClip();
  await type('Question', 'What is ω² in deep water?');
  await type('Answer', 'gk');
  await type('Marks', '2');
  key('Enter');
  await read('What is ω² in deep water?');
  const prompt = screen.getByLabelText<HTMLTextAreaElement>('Question');
  await waitFor(() => expect(document.activeElement).toBe(prompt));
  expect([prompt.value, screen.getByLabelText<HTMLInputElement>('Marks').value]).toEqual(['', '1']);
  await type('Question', 'And in shallow water?');
  await type('Answer', 'ghk²');
  await press('Add the question');
  await read('And in shallow water?');
  expect((await db.getAll('questions')).sort((a, b) => b.marks - a.marks)).toMatchObject([
    { ...place, prompt: 'What is ω² in deep water?', answer: 'gk', marks: 2 },
    { ...place, prompt: 'And in shallow water?', answer: 'ghk²', marks: 1 },
  ]);
});

test('what is written goes to the topic that was chosen for it', async () => {
  const db = await openClip();
  await choose('Write for', '2 Tides');
  await type('Lead', 'Spring tides');
  await type('Rest', 'come at new and full moon');
  await press('Add the line');
  await read('Spring tides');
  expect(await db.getAll('lines')).toMatchObject([
    { topicId: tides.id, clipId: clip.id, lead: 'Spring tides', rest: 'come at new and full moon' },
  ]);
});

test.each(['', '0', '21', '1.5'])('a question of “%s” marks is not sent', async (marks) => {
  const db = await openClip();
  await type('Question', 'What is ω²?');
  await type('Answer', 'gk');
  const field = await type('Marks', marks);
  await press('Add the question');
  expect(field.validity.valid).toBe(false);
  expect(await db.count('questions')).toBe(0);
});

test('an answer of spaces is refused by its name, and what was typed stays', async () => {
  const db = await openClip();
  await type('Question', 'What is ω²?');
  await type('Answer', '   ');
  await press('Add the question');
  expect((await see('alert')).textContent).toContain('“answer”');
  expect(screen.getByLabelText<HTMLTextAreaElement>('Question').value).toBe('What is ω²?');
  expect(await db.count('questions')).toBe(0);
});

test('a question is changed', async () => {
  const db = await openClip({ questions: [question] });
  await press('Change: State the dispersion relation.');
  const list = await section('Questions from this clip');
  const [prompt] = list.getAllByLabelText<HTMLTextAreaElement>('Question');
  expect(prompt!.value).toBe('State the dispersion relation.');
  prompt!.value = 'State the deep-water dispersion relation.';
  prompt!.dispatchEvent(new Event('input', { bubbles: true }));
  await press('Save');
  await read('State the deep-water dispersion relation.');
  expect(await db.getAll('questions')).toMatchObject([
    { id: question.id, prompt: 'State the deep-water dispersion relation.', answer: 'ω² = gk' },
  ]);
});

test('left as it was, a question is as it was, also when it is opened again', async () => {
  const db = await openClip({ questions: [question] });
  const edit = 'Change: State the dispersion relation.';
  const field = () => screen.getAllByLabelText<HTMLTextAreaElement>('Question')[0]!;
  await press(edit);
  field().value = 'Something else?';
  field().dispatchEvent(new Event('input', { bubbles: true }));
  await press('Leave as it was');
  await press(edit);
  expect(field().value).toBe('State the dispersion relation.');
  expect(await db.get('questions', question.id)).toEqual(question);
});

test('a line is changed', async () => {
  const db = await openClip({ lines: [line] });
  await press('Change: Deep-water speed');
  const [rest] = screen.getAllByLabelText<HTMLTextAreaElement>('Rest');
  rest!.value = 'c = √(g/k)';
  rest!.dispatchEvent(new Event('input', { bubbles: true }));
  await press('Save');
  await read('c = √(g/k)');
  expect(await db.get('lines', line.id)).toMatchObject({ lead: 'Deep-water speed', rest: 'c = √(g/k)' });
});

const DELETED: [string, Rows, 'questions' | 'lines', string, string][] = [
  ['a question', { questions: [question] }, 'questions', question.id, question.prompt],
  ['a line', { lines: [line] }, 'lines', line.id, line.lead],
];
test.each(DELETED)('%s is deleted, and Undo brings it back', async (_what, rows, store, id, name) => {
  const db = await openClip(rows);
  await press(`Delete: ${name}`);
  await read(`Deleted: ${name}`);
  expect(await db.get(store, id)).toBeUndefined();
  await press('Undo');
  await waitFor(() => expect(screen.queryByText(`Deleted: ${name}`)).toBeNull());
  await see('button', `Delete: ${name}`);
  expect(await db.get(store, id)).toMatchObject({ id });
});

test('Close takes the undo bar away; what was deleted stays set aside', async () => {
  const db = await openClip({ questions: [question] });
  await press(`Delete: ${question.prompt}`);
  await press('Close');
  await waitFor(() => expect(screen.queryByText(`Deleted: ${question.prompt}`)).toBeNull());
  expect(await db.getAll('setAside')).toMatchObject([{ store: 'questions', why: 'deleted' }]);
});

describe('what the passage suggests', () => {
  const told = clipOf({
    topicIds: [deep.id],
    text: 'A seiche is a standing wave in a closed basin. Depth decides where the water is shallow.',
    html: '<p>A seiche is a standing wave in a closed basin. Depth decides where the water is shallow.</p>',
  });
  const openTold = (rows: Rows = {}) => openDesk(`clip/${told.id}`, courseRows({ clips: [told], ...rows }));

  test('a draft goes into the form, is changed there and added', async () => {
    const db = await openTold();
    await press('Put it in the form');
    const prompt = screen.getByLabelText<HTMLTextAreaElement>('Question');
    await waitFor(() => expect(prompt.value).toBe('What is meant by a seiche?'));
    expect(document.activeElement).toBe(prompt);
    await type('Answer', 'A standing wave.');
    await press('Add the question');
    await read('What is meant by a seiche?');
    expect(await db.getAll('questions')).toMatchObject([
      { prompt: 'What is meant by a seiche?', answer: 'A standing wave.', clipId: told.id },
    ]);
    // What is asked is not offered again.
    await waitFor(() => expect(screen.queryByRole('button', { name: 'Put it in the form' })).toBeNull());
  });

  test('a draft that does not fit is left', async () => {
    await openTold();
    await press('Not this one');
    await waitFor(() => expect(screen.queryByRole('button', { name: 'Put it in the form' })).toBeNull());
  });

  test('words that are selected in the passage are asked for', async () => {
    await openTold();
    const words = (await read(/^A seiche is a standing wave/)).firstChild!;
    const range = document.createRange();
    range.setStart(words, words.textContent!.indexOf('Depth'));
    range.setEnd(words, words.textContent!.indexOf(' decides'));
    getSelection()!.removeAllRanges();
    getSelection()!.addRange(range);
    const button = screen.getByRole<HTMLButtonElement>('button', { name: 'Ask for the selected words' });
    await waitFor(() => {
      // jsdom does not tell.
      document.dispatchEvent(new Event('selectionchange'));
      expect(button.disabled).toBe(false);
    });
    await press('Ask for the selected words');
    const prompt = screen.getByLabelText<HTMLTextAreaElement>('Question');
    await waitFor(() => expect(prompt.value).toBe('… decides where the water is shallow.'));
    expect(screen.getByLabelText<HTMLTextAreaElement>('Answer').value).toBe('Depth');
  });

  test('a near copy and a question of sequence are pointed out while they are written', async () => {
    const one = aQuestion({
      ...place,
      clipId: null,
      prompt: 'What is meant by a seiche?',
      answer: 'A standing wave',
    });
    await openTold({ questions: [one] });
    await type('Question', 'What is meant by the seiche?');
    await read(/^You ask nearly the same already/);
    await type('Question', 'What comes next in the list?');
    await read(/^This asks for an order only/);
  });
});
