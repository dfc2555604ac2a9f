// @vitest-environment jsdom
import { fireEvent, screen, waitFor } from '@testing-library/preact';
import { expect, test } from 'vitest';
import { courseRows, deep, shallow, tides, waves } from '../a-course.ts';
import { freshScreens, openDesk } from '../render-in-deck.tsx';
import { choose, fillIn, press, read, see, type } from '../student.ts';

freshScreens();

const PASTED = [
  '1 Waves at sea',
  '  1.1 Deep water (60 %)',
  '    State the dispersion relation for deep water.',
  '  1.2 Shallow water (40 %)',
  '2 Tides',
].join('\n');

const paste = async (text = PASTED) => {
  await type('Syllabus', text);
  await press('Read it');
};
const without = courseRows({ topics: [] });

/** The lines of the draft as they stand, each with its depth. */
const lines = () =>
  [...screen.getByRole('main').querySelectorAll<HTMLElement>('.tree > li')].map((item) => {
    const depth = Number(item.style.getPropertyValue('--depth'));
    return '  '.repeat(depth) + item.textContent!.replace(/\s+/g, ' ').trim();
  });
const DRAFT = [
  'Topic: 1 Waves at sea',
  '  Topic: 1.1 Deep water 60 %',
  '    Statement: State the dispersion relation for deep water.',
  '  Topic: 1.2 Shallow water 40 %',
  'Topic: 2 Tides',
];
/** Opens a file as a file dialog does. */
function openFile(field: HTMLInputElement, file: File): void {
  Object.defineProperty(field, 'files', { value: [file], configurable: true });
  fireEvent.change(field);
}
/** Opens a line of the draft. */
const openLine = (name: RegExp) => press(name);
const saved = async (db: Awaited<ReturnType<typeof openDesk>>) =>
  (await db.getAll('topics'))
    .filter(({ off }) => !off)
    .sort((a, b) => a.order - b.order)
    .map(({ code, title }) => `${code} ${title}`.trim());

test('what is pasted is shown as it was understood, and nothing is saved yet', async () => {
  const db = await openDesk('syllabus', without);
  await paste();
  await read('4 topics, 1 statement');
  expect(lines()).toEqual(DRAFT);
  expect([await db.count('topics'), await db.count('statements')]).toEqual([0, 0]);
});

test('saved, it stands with its shares, its tree and its statements', async () => {
  const db = await openDesk('syllabus', without);
  await paste();
  await press('Save the syllabus');
  await read(/^Saved: 4 topics\./);
  const topics = await db.getAll('topics');
  const of = (code: string) => topics.find((topic) => topic.code === code)!;
  expect(await saved(db)).toEqual(['1 Waves at sea', '1.1 Deep water', '1.2 Shallow water', '2 Tides']);
  expect(of('1.1')).toMatchObject({ parentId: of('1').id, share: 60 });
  expect(await db.getAll('statements')).toMatchObject([
    { topicId: of('1.1').id, text: 'State the dispersion relation for deep water.' },
  ]);
  expect(screen.getByRole('link', { name: 'See the gaps' }).getAttribute('href')).toBe('#/coverage');
});

test('a line is put right, and Undo goes back change by change', async () => {
  const db = await openDesk('syllabus', without);
  await paste();
  await openLine(/Shallow water/);
  await fillIn('Text', 'Water of finite depth');
  await fillIn('Number', '1.3');
  await press('Done');
  expect(lines()[3]).toBe('  Topic: 1.3 Water of finite depth 40 %');
  await press('Undo');
  expect(lines()[3]).toBe('  Topic: 1.2 Water of finite depth 40 %');
  await press('Undo');
  expect(lines()).toEqual(DRAFT);
  expect(screen.getByRole<HTMLButtonElement>('button', { name: 'Undo' }).disabled).toBe(true);
  await press('Save the syllabus');
  await waitFor(async () => expect(await saved(db)).toHaveLength(4));
});

test.each([
  ['Further in', /Tides/, [...DRAFT.slice(0, 4), '  Topic: 2 Tides']],
  [
    'Further out',
    /1\.2Shallow|1\.2 Shallow/,
    [...DRAFT.slice(0, 3), 'Topic: 1.2 Shallow water 40 %', DRAFT[4]!],
  ],
  ['Up', /Tides/, [DRAFT[4]!, ...DRAFT.slice(0, 4)]],
  ['Down', /Waves at sea/, [DRAFT[4]!, ...DRAFT.slice(0, 4)]],
  ['Remove', /Shallow water/, [...DRAFT.slice(0, 3), DRAFT[4]!]],
])('%s moves a line with all that stands under it', async (button, line, after) => {
  await openDesk('syllabus', without);
  await paste();
  await openLine(line);
  await press(button);
  const done = screen.queryByRole('button', { name: 'Done' });
  if (done) fireEvent.click(done);
  expect(lines()).toEqual(after);
});

test('a new line below is opened at once; without text it is not saved', async () => {
  const db = await openDesk('syllabus', without);
  await paste();
  await openLine(/Tides/);
  await press('New line below');
  expect((await screen.findByLabelText<HTMLInputElement>('Text')).value).toBe('');
  await fillIn('Text', 'Hydrostatic pressure');
  await press('New line below');
  await press('Save the syllabus');
  await waitFor(async () => expect((await saved(db)).slice(3)).toEqual(['2 Tides', 'Hydrostatic pressure']));
});

test('Undo closes the line that was open, so that no other one takes its place', async () => {
  await openDesk('syllabus', without);
  await paste();
  await openLine(/Waves at sea/);
  await press('New line below');
  await press('Undo');
  expect(screen.queryByLabelText('Text')).toBeNull();
  expect(lines()).toEqual(DRAFT);
});

test('a statement can be made a topic', async () => {
  await openDesk('syllabus', without);
  await paste();
  await openLine(/dispersion relation/);
  await choose('It is a', 'Topic');
  await press('Done');
  expect(lines()[2]).toBe('    Topic: State the dispersion relation for deep water.');
  await read('5 topics, 0 statements');
});

test('Leave as it was saves nothing', async () => {
  const db = await openDesk('syllabus', without);
  await paste();
  await press('Leave as it was');
  await see('heading', 'Bring in the syllabus');
  expect(await db.count('topics')).toBe(0);
});

test.each([
  ['nothing', '  \n ', /^There is no syllabus here yet/],
  ['what is no text', 'PK\u0000\u0003\u0004 oceanography', /^This is not plain text/],
  ['far too many lines', 'Tides\n'.repeat(5001), /^This has 5001 lines, and a syllabus may have 5000/],
])('%s is refused with what to do, and stays in the field', async (_what, text, message) => {
  await openDesk('syllabus', without);
  await paste(text);
  expect((await see('alert')).textContent).toMatch(message);
  const field = screen.getByLabelText<HTMLTextAreaElement>('Syllabus');
  expect(field.value).toBe(text);
  await paste();
  await read('4 topics, 1 statement');
  expect(screen.queryByRole('alert')).toBeNull();
});

test('a syllabus is opened as a file', async () => {
  await openDesk('syllabus', without);
  const field = await screen.findByLabelText<HTMLInputElement>('Open a file');
  openFile(field, new File([PASTED], 'syllabus.txt'));
  await read('4 topics, 1 statement');
  expect(lines()).toEqual(DRAFT);
});

test('what was understood by a guess is said by its line', async () => {
  await openDesk('syllabus', without);
  await paste('1 Waves\n  1.1.1 Swell\n2 Tides\n2 Tides again');
  await read(/understood by a guess$/);
  await read('Line 4: its number is there twice.');
});

test('a newer version switches off what is gone and keeps the rest as the same topics', async () => {
  const db = await openDesk('syllabus', courseRows());
  await see('heading', 'Bring in a newer version');
  await paste('1 Waves at sea\n  1.1 Deep water\n2 Ocean tides\n3 Hydrostatic pressure');
  await press('Save the syllabus');
  await read(/^Saved: 4 topics\./);
  const topics = new Map((await db.getAll('topics')).map((topic) => [topic.id, topic]));
  expect(topics.get(waves.id)).toMatchObject({ off: false });
  expect(topics.get(deep.id)).toMatchObject({ off: false, parentId: waves.id });
  expect(topics.get(tides.id)).toMatchObject({ off: false, title: 'Ocean tides' });
  expect(topics.get(shallow.id)).toMatchObject({ off: true });
});

test('what is saved can be changed, and its topics stay the same', async () => {
  const db = await openDesk('syllabus', courseRows());
  await press('Change it');
  await openLine(/Tides/);
  await fillIn('Text', 'Tides and tidal streams');
  await press('Save the syllabus');
  await read(/^Saved: 4 topics\./);
  expect(await db.get('topics', tides.id)).toMatchObject({ title: 'Tides and tidal streams' });
  expect(await db.count('topics')).toBe(4);
});
