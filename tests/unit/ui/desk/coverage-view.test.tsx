// @vitest-environment jsdom
import { act, screen, waitFor, within } from '@testing-library/preact';
import { expect, test, vi } from 'vitest';
import { MORNING, aLine, aStatement, anAttempt, aQuestion, aTopic } from '../../builders.ts';
import { aSource, clipOf, course, courseRows, deep, shallow, source, tides, waves } from '../a-course.ts';
import { fakeExtension } from '../fake-extension.ts';
import { freshScreens, openDesk, type Rows } from '../render-in-deck.tsx';
import { follow, key, press, read, see } from '../student.ts';

freshScreens();

const DAY = 86_400_000;
const inCourse = { courseId: course.id };
const rowOf = async (name: RegExp) => within((await see('rowheader', name)).closest('tr')!);
const topicsShown = async () => {
  await see('table');
  return screen.getAllByRole('rowheader').map(({ textContent }) => textContent);
};

test('without a syllabus it leads to bringing one in', async () => {
  await openDesk('coverage', courseRows({ topics: [] }));
  await read(/^Without a syllabus nobody can say/);
  await press('Bring in the syllabus', 'link');
  await see('heading', 'Bring in the syllabus');
});

test('leaf topics stand worst first, with their shares of the exam', async () => {
  await openDesk('coverage', courseRows());
  expect(await topicsShown()).toEqual(['2 Tides', '1.1 Deep water', '1.2 Shallow water']);
  expect((await rowOf(/Tides/)).getByRole('cell', { name: '50%' })).toBeTruthy();
  expect((await rowOf(/Deep/)).getByRole('cell', { name: '30%' })).toBeTruthy();
  await read('3 of 3 topics have nothing yet.');
});

test('the table is sorted by any column, and back', async () => {
  await openDesk('coverage', courseRows());
  await press('Topic');
  expect(await topicsShown()).toEqual(['1.1 Deep water', '1.2 Shallow water', '2 Tides']);
  expect((await see('columnheader', /^Topic/)).getAttribute('aria-sort')).toBe('ascending');
  await press(/^Topic/);
  expect(await topicsShown()).toEqual(['2 Tides', '1.2 Shallow water', '1.1 Deep water']);
  await press('Exam share');
  expect((await topicsShown())[0]).toBe('2 Tides');
  expect((await see('columnheader', /^Topic/)).hasAttribute('aria-sort')).toBe(false);
  await press('Worst first again');
  expect(screen.queryByRole('button', { name: 'Worst first again' })).toBeNull();
});

test('the map is one stop, and the arrow keys lead from field to field', async () => {
  await openDesk('coverage', courseRows());
  const map = within(await see('group', 'The exam as a map'));
  const fields = map.getAllByRole('link');
  expect(fields.map((field) => field.querySelector('title')!.textContent)).toEqual([
    '1.1 Deep water: 30% of the exam, 0% of that secured',
    '1.2 Shallow water: 20% of the exam, 0% of that secured',
    '2 Tides: 50% of the exam, 0% of that secured',
  ]);
  expect(fields.map((field) => field.getAttribute('tabindex'))).toEqual(['0', '-1', '-1']);
  act(() => fields[0]!.focus());
  key('ArrowRight');
  expect(document.activeElement).toBe(fields[1]);
  expect(fields.map((field) => field.getAttribute('tabindex'))).toEqual(['-1', '0', '-1']);
  key('ArrowLeft');
  key('ArrowLeft');
  expect(document.activeElement).toBe(fields[0]);
});

test('what is secured is told overall, with its limits, and how it grew', async () => {
  const question = aQuestion({ ...inCourse, topicId: tides.id, createdAt: MORNING - DAY });
  const attempts = [0, 4, 9, 16, 30, 44].map((day) =>
    anAttempt({ ...inCourse, topicId: tides.id, itemId: question.id, at: MORNING + day * DAY }),
  );
  vi.useFakeTimers({ toFake: ['Date'], now: MORNING + 45 * DAY });
  await openDesk('coverage', courseRows({ questions: [question], attempts }));
  await read(/^Secured: 50% of the exam, likely between 10% and 86%\.$/);
  await see('img', /^The secured part of the exam over time: 50% now/);
  vi.useRealTimers();
});

test('before anything is secured it says what that takes', async () => {
  await openDesk('coverage', courseRows());
  await read(/^Nothing is secured yet\./);
});

test('the checklist has every topic and statement, with boxes to tick on paper', async () => {
  const topics = courseRows().topics!;
  const statement = aStatement({
    ...inCourse,
    topicId: deep.id,
    code: 'a',
    text: 'State the dispersion relation.',
  });
  await openDesk('coverage', courseRows({ topics, statements: [statement] }));
  await follow('Checklist to print');
  await see('heading', /^Checklist: /);
  await read('State the dispersion relation.');
  expect(document.querySelectorAll('.box')).toHaveLength(2 * 4);
  const printed = vi.fn();
  vi.stubGlobal('print', printed);
  await press('Print');
  expect(printed).toHaveBeenCalledTimes(1);
});

test('evidence moves a topic down, and is ticked or crossed in words, too', async () => {
  const clip = clipOf({ topicIds: [tides.id], ownWords: 'Two bulges, one turn a day.', unclear: false });
  const rest = { ...inCourse, topicId: tides.id, clipId: clip.id };
  const [question, line] = [aQuestion(rest), aLine(rest)];
  const attempts = [question, line].map(({ id }) =>
    anAttempt({ ...inCourse, topicId: tides.id, itemId: id }),
  );
  const rows = { clips: [clip], questions: [question], lines: [line], attempts };
  await openDesk('coverage', courseRows(rows));
  expect((await topicsShown()).at(-1)).toBe('2 Tides');
  const items = (await rowOf(/Tides/)).getAllByRole('listitem').map(({ textContent }) => textContent!.trim());
  expect(items).toEqual([
    'sources: 1 of 2 (partly there)',
    'own words: 1 of 1',
    'questions: 1',
    'note lines: 1',
    'recalled: 2 of 2',
    'secured: 0 of 2 (missing)',
  ]);
  await read('2 of 3 topics have nothing yet.');
  expect((await rowOf(/Deep/)).getByText('nothing yet')).toBeTruthy();
});

/** A deck in which the topic has one open gap of each kind, and where its action leads. */
const good = clipOf({ ownWords: 'Speed grows with the wavelength.' });
const unclear = clipOf({ ownWords: 'Something with g and k', unclear: true });
const wordless = clipOf();
const question = aQuestion({ ...inCourse, topicId: deep.id });
const LEADS: [string, Rows, string][] = [
  ['Write your own words', { clips: [unclear, wordless] }, `#/clip/${wordless.id}`],
  ['Return to what is unclear', { clips: [good, unclear] }, `#/clip/${unclear.id}`],
  [
    'Return to what is unclear',
    { clips: [good], topics: [waves, { ...deep, unclear: true }, shallow, tides] },
    `#/read/${deep.id}`,
  ],
  ['Write a question', { clips: [good] }, `#/clip/${good.id}`],
  ['Write a question', { lines: [aLine({ ...inCourse, topicId: deep.id })] }, `#/topic/${deep.id}`],
  ['Write a note line', { clips: [good], questions: [question] }, `#/clip/${good.id}`],
  ['Recall it', { questions: [question] }, `#/round/${deep.id}`],
  [
    'Recall it again',
    {
      questions: [question],
      attempts: [anAttempt({ ...inCourse, topicId: deep.id, itemId: question.id })],
    },
    `#/round/${deep.id}`,
  ],
];
test.each(LEADS)('“%s” leads to where it is done', async (name, rows, place) => {
  await openDesk('coverage', courseRows(rows));
  (await rowOf(/Deep water/)).getByRole('link', { name }).click();
  await waitFor(() => expect(location.hash).toBe(place));
  await waitFor(() => expect(screen.queryByRole('table')).toBeNull());
  await screen.findByRole('heading', { level: 1 });
});

test('a gap is aimed at and un-aimed; the way to keep a passage is said with the shortcut that is set', async () => {
  const db = await openDesk('coverage', courseRows());
  const aim = (await rowOf(/Tides/)).getByRole('button', { name: 'Aim the next clip here' });
  aim.click();
  await read('The next passage you keep goes under this topic.');
  await read(/press Alt\+K\.$/);
  expect(await db.get('settings', 'settings')).toMatchObject({ aimedTopicId: tides.id });
  expect(aim.getAttribute('aria-pressed')).toBe('true');
  aim.click();
  await waitFor(() => expect(screen.queryByText(/^The next passage you keep/)).toBeNull());
  expect(await db.get('settings', 'settings')).toMatchObject({ aimedTopicId: null });
});

test('aiming elsewhere moves the aim: there is one', async () => {
  const db = await openDesk('coverage', courseRows());
  (await rowOf(/Tides/)).getByRole('button', { name: 'Aim the next clip here' }).click();
  await read('The next passage you keep goes under this topic.');
  (await rowOf(/Shallow/)).getByRole('button', { name: 'Aim the next clip here' }).click();
  await waitFor(async () => expect((await db.get('settings', 'settings'))!.aimedTopicId).toBe(shallow.id));
  await waitFor(() => expect(screen.getAllByRole('button', { pressed: true })).toHaveLength(1));
});

test('where no shortcut is set, the other ways to keep a passage are said', async () => {
  fakeExtension({ shortcut: '' });
  await openDesk('coverage', courseRows());
  (await rowOf(/Tides/)).getByRole('button', { name: 'Aim the next clip here' }).click();
  await read(/use the menu of the right mouse button/);
});

test('a second source closes the gap of the second explanation', async () => {
  const other = aSource({ url: 'http://127.0.0.1/swell' });
  const clips = [good, clipOf({ sourceId: other.id, ownWords: 'The same from the energy.' })];
  await openDesk('coverage', courseRows({ clips, sources: [source, other] }));
  const row = await rowOf(/Deep water/);
  expect(row.queryByRole('button', { name: 'Aim a second explanation here' })).toBeNull();
  expect(row.getByText(/^sources: 2 of 2$/)).toBeTruthy();
});

test.each([
  ['2026-05-15', 'Exam in 1 day'],
  ['2026-05-24', 'Exam in 10 days'],
  ['2026-05-13', 'The exam day is past'],
  [null, 'Exam day not set'],
])('with the exam on %s it says “%s”', async (examDay, text) => {
  vi.useFakeTimers({ toFake: ['Date'], now: new Date(2026, 4, 14, 8) });
  await openDesk('coverage', courseRows({ courses: [{ ...course, examDay }] }));
  await read(text);
  vi.useRealTimers();
});

test('of a long syllabus the worst sixty are drawn, and the rest on demand', async () => {
  const topics = Array.from({ length: 65 }, (_, order) =>
    aTopic({ ...inCourse, order, code: '', title: `Tidal constituent ${order + 1}` }),
  );
  await openDesk('coverage', courseRows({ topics }));
  expect(await topicsShown()).toHaveLength(60);
  await press('Show all 65 topics');
  expect(await topicsShown()).toHaveLength(65);
});
