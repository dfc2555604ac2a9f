// @vitest-environment jsdom
import { fireEvent, screen, waitFor, within } from '@testing-library/preact';
import { expect, test, vi } from 'vitest';
import { aLesson } from '../../builders.ts';
import { course, courseRows, deep, tides } from '../a-course.ts';
import { freshScreens, openDesk } from '../render-in-deck.tsx';
import { choose, key, press, read, see, type } from '../student.ts';

freshScreens();

const inCourse = { courseId: course.id };
const chase = async () => within(await see('region', 'To chase'));

test('they are entered one after another by keyboard; what is missing is to be chased', async () => {
  const db = await openDesk('lessons', courseRows());
  await type('Title', 'The dispersion relation');
  key('Enter');
  await read('Added: The dispersion relation');
  await choose('Kind', 'Homework');
  await type('From whom', 'Tide teacher');
  await type('Title', 'Orbits');
  key('Enter');
  await read('Added: Orbits');
  expect((await screen.findByLabelText<HTMLInputElement>('Title')).value).toBe('');
  expect(document.activeElement).toBe(screen.getByLabelText('Title'));
  const rows = await db.getAll('lessons');
  expect(
    rows.map(({ title, kind, wantedFrom, topicId }) => [title, kind, wantedFrom, topicId]).sort(),
  ).toEqual([
    ['Orbits', 'homework', 'Tide teacher', deep.id],
    ['The dispersion relation', 'lesson', '', deep.id],
  ]);
  await waitFor(async () => expect((await chase()).getAllByRole('listitem')).toHaveLength(2));
  await see('heading', /1\.1 Deep water 0 of 2 held/);
});

test('what is overdue stands first and is named; ticked, it is chased no more', async () => {
  vi.useFakeTimers({ toFake: ['Date'], now: new Date(2026, 4, 14, 8) });
  const lessons = [
    aLesson({ ...inCourse, topicId: tides.id, title: 'Springs', wantedBy: '2026-05-20' }),
    aLesson({ ...inCourse, topicId: deep.id, kind: 'sheet', title: 'Orbits', wantedBy: '2026-05-13' }),
  ];
  const db = await openDesk('lessons', courseRows({ lessons }));
  const items = (await chase()).getAllByRole('listitem').map(({ textContent }) => textContent);
  expect(items).toEqual([
    'Sheet: OrbitsOverdue by 13 May 2026 · 1.1 Deep water',
    'Lesson: Springsby 20 May 2026 · 2 Tides',
  ]);
  (await chase()).getByRole('checkbox', { name: 'Sheet: Orbits' }).click();
  await waitFor(async () => expect((await chase()).getAllByRole('listitem')).toHaveLength(1));
  expect(await db.get('lessons', lessons[1]!.id)).toMatchObject({ held: true });
  vi.useRealTimers();
});

test('the list is copied as a message, for everyone or for one person', async () => {
  const writeText = vi.fn(async (_text: string) => undefined);
  const lessons = [
    aLesson({
      ...inCourse,
      topicId: tides.id,
      title: 'Springs',
      wantedFrom: 'Tide teacher',
      wantedBy: '2026-05-20',
    }),
    aLesson({ ...inCourse, topicId: deep.id, title: 'Orbits', wantedFrom: 'Course office' }),
  ];
  await openDesk('lessons', courseRows({ lessons }));
  Object.defineProperty(navigator, 'clipboard', { value: { writeText } });
  await press('Copy as a message');
  await read('Copied.');
  expect(writeText).toHaveBeenLastCalledWith(
    [
      'I am still missing the following. Could you let me have it?',
      '- Lesson: Springs (2 Tides; from Tide teacher, by 20 May 2026)',
      '- Lesson: Orbits (1.1 Deep water; from Course office)',
    ].join('\n'),
  );
  const list = await chase();
  const select = list.getByLabelText<HTMLSelectElement>('Missing from');
  select.value = 'Course office';
  select.dispatchEvent(new Event('change', { bubbles: true }));
  await waitFor(() => expect(list.getAllByRole('listitem')).toHaveLength(1));
  await press('Copy as a message');
  expect(writeText.mock.lastCall![0].split('\n').slice(1)).toEqual(['- Lesson: Orbits (1.1 Deep water)']);
});

test('one is changed, deleted and put back', async () => {
  const lesson = aLesson({ ...inCourse, topicId: tides.id, title: 'Springs', held: true });
  const db = await openDesk('lessons', courseRows({ lessons: [lesson] }));
  await press('Change: Springs');
  const form = within((await see('button', 'Leave as it was')).closest('form')!);
  fireEvent.input(form.getByLabelText('Title'), { target: { value: 'Spring tides' } });
  form.getByRole('button', { name: 'Save' }).click();
  await press('Delete: Spring tides');
  await waitFor(async () => expect(await db.count('lessons')).toBe(0));
  await press('Undo');
  await waitFor(async () => expect(await db.getAll('lessons')).toMatchObject([{ title: 'Spring tides' }]));
});

test('the coverage counts them, and leads here when one is missing', async () => {
  const lessons = [
    aLesson({ ...inCourse, topicId: tides.id, held: true }),
    aLesson({ ...inCourse, topicId: tides.id }),
  ];
  await openDesk('coverage', courseRows({ lessons }));
  await read('lessons, sheets, homework: 1 of 2');
  await press('Chase what is missing', 'link');
  await see('heading', 'To chase');
});

test('without a syllabus there is nothing to put them under', async () => {
  await openDesk('lessons', courseRows({ topics: [] }));
  await see('link', 'Bring in the syllabus');
});
