// @vitest-environment jsdom
import { fireEvent, screen, waitFor } from '@testing-library/preact';
import { expect, test } from 'vitest';
import { OCEAN, aPackage } from '../../syllabus/bring-in/a-package.ts';
import { aQuestion } from '../../builders.ts';
import { clipOf, course, courseRows, shallow, tides, waves } from '../a-course.ts';
import { freshScreens, openDesk } from '../render-in-deck.tsx';
import { choose, fillIn, press, read, see, type } from '../student.ts';

freshScreens();

const without = courseRows({ topics: [] });
const paste = async (text: string) => {
  await type('Syllabus', text);
  await press('Read it');
};
const open = async (content: BlobPart, name: string) => {
  const field = await screen.findByLabelText<HTMLInputElement>('Open a file');
  Object.defineProperty(field, 'files', { value: [new File([content], name)], configurable: true });
  fireEvent.change(field);
};
const lines = () =>
  [...document.querySelectorAll<HTMLElement>('.tree > li')].map(
    (item) =>
      '  '.repeat(Number(item.style.getPropertyValue('--depth'))) +
      item.textContent!.replace(/\s+/g, ' ').trim(),
  );
const readAs = () => screen.getByLabelText<HTMLSelectElement>('It was read as').selectedOptions[0]!.text;

const TABLE =
  'Code,Topic,Statement,Marks,Tier\r\n1.1,Deep water,"State, in words, the relation.",4,\r\n1.2,Shoaling,Explain it.,6,HL only\r\n';
const TABLE_LINES = [
  'Topic: Deep water 4 marks',
  '  Statement: 1.1 State, in words, the relation.',
  'Topic: Shoaling 6 marks',
  '  Statement: 1.2 Explain it. HL',
];

test('a table is recognised, pasted or opened, whatever its file is called', async () => {
  await openDesk('syllabus', without);
  await open(TABLE, 'plan.txt');
  await read('2 topics, 2 statements');
  expect(readAs()).toBe('a table: CSV or from a spreadsheet');
  expect(lines()).toEqual(TABLE_LINES);
  await press('Leave as it was');
  await paste(TABLE.replaceAll(/,(?=\S)(?!\s)/g, '\t').replace('"State\t', '"State,'));
  await read('2 topics, 2 statements');
});

test('a table in UTF-16, as spreadsheets save Unicode text, is read', async () => {
  await openDesk('syllabus', without);
  const bytes = new Uint8Array(2 + 2 * 40);
  const text = '\ufeffTopic\tMarks\r\nÉbullition\t3\r\nTides\t4'.padEnd(41, ' ');
  for (let i = 0; i < text.length; i++) new DataView(bytes.buffer).setUint16(2 * i, text.charCodeAt(i), true);
  await open(bytes, 'plan.txt');
  await read('2 topics, 0 statements');
  expect(lines()).toEqual(['Topic: Ébullition 3 marks', 'Topic: Tides 4 marks']);
});

test('a CASE package is recognised', async () => {
  await openDesk('syllabus', without);
  await open(JSON.stringify(aPackage(OCEAN)), 'framework.json');
  await read('4 topics, 2 statements');
  expect(readAs()).toBe('a CASE package (JSON)');
  expect(lines()[2]).toBe('    Statement: 1.1.a State the dispersion relation.');
});

test('the student may say that it is something else, and Undo goes back', async () => {
  await openDesk('syllabus', without);
  await paste('# Sea\n- Waves\n- Tides');
  await read('2 topics, 0 statements');
  expect(readAs()).toBe('Markdown');
  await choose('It was read as', 'a numbered or set-in list');
  await waitFor(() => expect(readAs()).toBe('a numbered or set-in list'));
  await press('Undo');
  expect(readAs()).toBe('Markdown');
});

test('a format that is chosen before reading is kept to, and what does not fit it is told', async () => {
  await openDesk('syllabus', without);
  await choose('Read it as', 'a CASE package (JSON)');
  await paste('1 Waves\n2 Tides');
  expect((await see('alert')).textContent).toMatch(/^This file breaks off or is damaged/);
  expect(screen.getByLabelText<HTMLTextAreaElement>('Syllabus').value).toBe('1 Waves\n2 Tides');
});

test.each([
  ['half a CASE package', JSON.stringify(aPackage(OCEAN)).slice(0, 400), /^This file breaks off/],
  ['a CASE package without items', JSON.stringify(aPackage([])), /^This is JSON, and no CASE package/],
  ['a picture', new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0, 0, 0, 1, 2, 3]), /^This is not plain text/],
])('%s: a message, and nothing is saved', async (_, content, message) => {
  const db = await openDesk('syllabus', without);
  await open(content as BlobPart, 'thing');
  expect((await see('alert')).textContent).toMatch(message);
  expect(await db.count('topics')).toBe(0);
});

test('a circle and a missing parent in CASE are said by item, and the rest comes in', async () => {
  await openDesk('syllabus', without);
  await open(
    JSON.stringify(
      aPackage([
        { code: '1', text: 'Waves', parent: '2' },
        { code: '2', text: 'Swell', parent: '1' },
        { code: '3', text: 'Ice', parent: '9' },
      ]),
    ),
    'framework.json',
  );
  await read('Item 1: it was said to stand under itself, so it stands at the top.');
  await read('Item 3: what it should stand under is not there, so it stands at the top.');
  expect(lines()).toEqual(['Topic: 1 Waves', '  Topic: 2 Swell', 'Topic: 3 Ice']);
});

test('a line that was left out is taken in where it stood', async () => {
  await openDesk('syllabus', without);
  await paste('1 Waves\n1.1 Swell\n\nPage 3 of 20\n\n2 Tides');
  await read('1 line was left out');
  await press('Take it in: Page 3 of 20');
  expect(lines()).toEqual(['Topic: 1 Waves', '  Topic: 1.1 Swell', 'Topic: Page 3 of 20', 'Topic: 2 Tides']);
  expect(screen.queryByText('1 line was left out')).toBeNull();
  await press('Undo');
  expect(lines()).toHaveLength(3);
});

test('shares of 130 % are told and scaled; shares of 0 are made even; both can be undone', async () => {
  const db = await openDesk('syllabus', without);
  await paste('1 Waves (80 %)\n2 Tides (50 %)');
  await read('The shares of the top topics add up to 130 %, not to 100 %. They will count in proportion.');
  await press('Scale them to 100 %');
  expect(lines()).toEqual(['Topic: 1 Waves 61.5 %', 'Topic: 2 Tides 38.5 %']);
  expect(screen.queryByText(/add up to 130/)).toBeNull();
  await press('Undo');
  await read(/add up to 130/);
  await press('Let all count the same');
  expect(lines()).toEqual(['Topic: 1 Waves', 'Topic: 2 Tides']);
  await press('Leave as it was');
  await paste('1 Waves (0 %)\n2 Tides (0 %)');
  await read(/^The shares of the top topics add up to 0\./);
  await press('Save the syllabus');
  await read(/^Saved: 2 topics/);
  expect((await db.getAll('topics')).map(({ share, unit }) => [share, unit])).toEqual([
    [0, 'percent'],
    [0, 'percent'],
  ]);
});

test('a share is written by hand, with its unit', async () => {
  const db = await openDesk('syllabus', without);
  await paste('1 Waves\n2 Tides');
  await press(/Waves/);
  await fillIn('Share', '12.5');
  await choose('in', 'marks');
  await fillIn('Tier or option', 'Option B');
  await press('Done');
  expect(lines()[0]).toBe('Topic: 1 Waves 12.5 marks Option B');
  await press('Save the syllabus');
  await read(/^Saved/);
  expect(await db.getAll('topics')).toContainEqual(
    expect.objectContaining({ title: 'Waves', share: 12.5, unit: 'marks', group: 'Option B' }),
  );
  await press('Change it');
  await press(/Waves/);
  await fillIn('Share', '');
  expect(screen.getByLabelText<HTMLInputElement>('Share').value).toBe('');
});

test('a tier is switched off as a whole: it stays, and counts for nothing', async () => {
  const db = await openDesk('syllabus', without);
  await paste('1 Waves\n1.1 Swell\n1.2 Shoaling (HL only)\n2 Tides');
  const box = await screen.findByLabelText<HTMLInputElement>(/^HL 1 line$/);
  expect(box.checked).toBe(true);
  fireEvent.click(box);
  expect(lines()[2]).toBe('  Topic: 1.2 Shoaling HL switched off');
  await press('Save the syllabus');
  await read(/^Saved: 4 topics/);
  expect((await db.getAll('topics')).find(({ group }) => group === 'HL')).toMatchObject({
    off: true,
    dropped: false,
  });
  location.hash = '#/coverage';
  await see('link', '1.1 Swell');
  expect(screen.queryByRole('link', { name: '1.2 Shoaling' })).toBeNull();
  location.hash = '#/syllabus';
  await press('Change it');
  fireEvent.click(await screen.findByLabelText(/^HL 1 line$/));
  await press('Save the syllabus');
  await read(/^Saved: 4 topics/);
  expect((await db.getAll('topics')).every(({ off }) => !off)).toBe(true);
});

test('a branch is removed with all below it', async () => {
  await openDesk('syllabus', without);
  await paste('1 Waves\n1.1 Swell\n2 Tides');
  await press(/Waves/);
  await press('Remove with all below');
  expect(lines()).toEqual(['Topic: 2 Tides']);
});

test('a newer version says what is added, dropped and renamed, and the student may know better', async () => {
  const db = await openDesk('syllabus', courseRows({ clips: [clipOf({ topicIds: [shallow.id] })] }));
  await paste('1 Waves at sea\n1.1 Deep water waves\n2 Ocean tides\n3 Shoaling');
  await read('Topics: 1 added, 1 dropped, 2 renamed, 0 moved. Statements: 0 added, 0 dropped, 0 reworded.');
  await read('1 clip');
  await choose('“1.2 Shallow water” is now', '3 Shoaling');
  await read(/^Topics: 0 added, 0 dropped, 3 renamed, 0 moved/);
  await press('Not the same topic: 2 Tides');
  await read(/^Topics: 1 added, 1 dropped, 2 renamed/);
  await press('Undo');
  await press('Save the syllabus');
  await read(/^Saved: 4 topics\./);
  expect(await db.get('topics', shallow.id)).toMatchObject({ title: 'Shoaling', dropped: false });
  expect(await db.get('topics', tides.id)).toMatchObject({ title: 'Ocean tides' });
});

test('what stands under a dropped topic is listed, and moved as a whole', async () => {
  const clip = clipOf({ topicIds: [shallow.id, tides.id] });
  const question = aQuestion({ courseId: course.id, topicId: shallow.id });
  const db = await openDesk('syllabus', courseRows({ clips: [clip], questions: [question] }));
  await paste('1 Waves at sea\n1.1 Deep water\n2 Tides');
  await press('Save the syllabus');
  await see('heading', 'Left from topics that were dropped');
  await see('heading', '1.2 Shallow water');
  await read('1 question, 0 note lines');
  expect((await db.get('clips', clip.id))!.topicIds).toEqual([shallow.id, tides.id]);
  await choose('Move all of it to', '1 Waves at sea');
  await press('Move what is left of: 1.2 Shallow water');
  await waitFor(() => expect(screen.queryByText('Left from topics that were dropped')).toBeNull());
  expect((await db.get('clips', clip.id))!.topicIds).toEqual([waves.id, tides.id]);
  expect((await db.get('questions', question.id))!.topicId).toBe(waves.id);
});

test('the same syllabus again changes nothing', async () => {
  await openDesk('syllabus', courseRows());
  await paste('1 Waves at sea\n1.1 Deep water\n1.2 Shallow water\n2 Tides');
  await read('Nothing: no topic and no statement comes, goes or is renamed.');
});
