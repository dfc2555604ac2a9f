// @vitest-environment jsdom
import { fireEvent, screen, waitFor } from '@testing-library/preact';
import { expect, test } from 'vitest';
import type { Picture } from '#lib/model/picture.ts';
import { aLine, aQuestion, aStatement, MORNING, newId } from '../../../builders.ts';
import { aSource, clipOf, course, courseRows, deep, tides } from '../../a-course.ts';
import { freshScreens, openDesk } from '../../render-in-deck.tsx';
import { press, read, see, type } from '../../student.ts';

freshScreens();

const place = { courseId: course.id, topicId: deep.id };
const line = aLine({ ...place, lead: 'Speed:', rest: 'grows with the wavelength' });

const aPicture = (clipId: string): Picture => ({
  id: newId(),
  createdAt: MORNING,
  changedAt: MORNING,
  courseId: course.id,
  clipId,
  bytes: new Blob(['x'], { type: 'image/png' }),
  type: 'image/png',
  width: 40,
  height: 20,
  alt: 'Two waves',
});

test('a diagram of a clip is placed below the line in hand, and taken away again', async () => {
  const clip = clipOf({ ownWords: 'Long waves win.' });
  const picture = aPicture(clip.id);
  const clips = [{ ...clip, pictureIds: [picture.id] }];
  const db = await openDesk(`condense/${deep.id}`, courseRows({ clips, pictures: [picture], lines: [line] }));
  await press(/^Speed:/);
  await press('Diagram 1 below the line');
  await waitFor(async () => expect((await db.get('lines', line.id))!.pictureIds).toEqual([picture.id]));
  await press('Take diagram 1 away');
  await waitFor(async () => expect((await db.get('lines', line.id))!.pictureIds).toEqual([]));
  await press('Undo');
  await read('Undone: a diagram was placed');
  await waitFor(async () => expect((await db.get('lines', line.id))!.pictureIds).toEqual([picture.id]));
});

test('questions stand beside their line; the number of both is against what is due', async () => {
  const beside = aQuestion({ ...place, lineId: line.id, prompt: 'What does the speed grow with?' });
  await openDesk(`condense/${deep.id}`, courseRows({ lines: [line], questions: [beside] }));
  await read('1 question');
  // 30 of 100 marks: 30 of 100 questions and 2.4 of 8 sides.
  await read(
    /^This topic: 0\.\d sides where its share of the exam would give it 2\.4, and 1 questions where it would give 30\.$/,
  );
  await press(/^Speed:/);
  await read(/Question beside it:/);
});

test('what another window changes comes in; a line that is deleted there while it is typed here is not lost', async () => {
  const db = await openDesk(`condense/${deep.id}`, courseRows({ lines: [line] }));
  await press(/^Speed:/);
  const field = await screen.findByLabelText<HTMLTextAreaElement>('Line of the notes');
  await db.delete('lines', line.id);
  fireEvent.input(field, { target: { value: 'Speed: grows with the wavelength, and more' } });
  await waitFor(async () =>
    expect(await db.get('lines', line.id)).toMatchObject({ rest: 'grows with the wavelength, and more' }),
  );
});

test('a second explanation stands beside the first; statements are ticked off, and what is copied is pointed out', async () => {
  const other = aSource({ url: 'http://127.0.0.1/other', title: 'Another page' });
  const statement = aStatement({ ...place, code: '(a)', text: 'State what decides the speed.' });
  const [first, again] = [
    clipOf({ text: 'Long waves outrun short ones in deep water every time.' }),
    clipOf({ text: 'The longer, the faster.' }),
  ];
  const second = clipOf({ sourceId: other.id, text: 'Speed grows as the square root of the length.' });
  const rows = courseRows({ clips: [first, again, second], statements: [statement] });
  const db = await openDesk(`read/${deep.id}`, { ...rows, sources: [...rows.sources!, other] });
  await read('0 of 3 clips understood · 0 of 1 statements explained');
  const cards = screen.getAllByRole('article').map((card) => card.getAttribute('aria-label'));
  expect(cards).toEqual([first.text.slice(0, 60), second.text, again.text]);
  fireEvent.click(screen.getAllByLabelText('(a) State what decides the speed.')[0]!);
  await read('0 of 3 clips understood · 1 of 1 statements explained');
  expect((await db.get('clips', first.id))!.statementIds).toEqual([statement.id]);
  const [field] = screen.getAllByLabelText('In your own words');
  fireEvent.input(field!, { target: { value: first.text } });
  await read(/^These words stand in the passage as they are: “Long waves outrun/);
});

test('a topic is marked unclear, and what cleared it is kept', async () => {
  const clip = clipOf({});
  const db = await openDesk(`read/${deep.id}`, courseRows({ clips: [clip] }));
  fireEvent.click(await screen.findByLabelText('This topic is unclear: I must come back to it'));
  await type('What made it clear?', 'the drawing');
  await press('It is clear now');
  await read(/^Cleared on .*: the drawing$/);
  const topic = (await db.get('topics', deep.id))!;
  expect(topic.unclear).toBe(false);
  expect(topic.cleared).toMatchObject([{ words: 'the drawing', clipId: null }]);
});

test('the overview shows each topic that counts with what its share would give it', async () => {
  await openDesk(
    'notes',
    courseRows({ lines: [line], questions: [aQuestion({ ...place, topicId: tides.id })] }),
  );
  expect((await see('row', /^2 Tides/)).textContent).toContain('1 (due: 50)');
  expect((await see('row', /^1.1 Deep water/)).textContent).toContain('0 (due: 30)');
});
