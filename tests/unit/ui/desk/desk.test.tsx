// @vitest-environment jsdom
import { screen, waitFor } from '@testing-library/preact';
import { openDB } from 'idb';
import { expect, test, vi } from 'vitest';
import { StudentError } from '#lib/model/student-error.ts';
import { changeCourse } from '#lib/store/actions/courses.ts';
import { linkTo, routeOf } from '#lib/ui/desk/route.ts';
import { Desk } from '#lib/ui/desk/desk.tsx';
import { rememberTrouble } from '#lib/ui/trouble.ts';
import { migrations } from '#lib/store/migrations/index.ts';
import { course, courseRows, deep, tides } from '../a-course.ts';
import { freshScreens, openDesk, renderInDeck } from '../render-in-deck.tsx';
import { follow, press, see } from '../student.ts';

freshScreens();

test.each([
  ['', { view: 'coverage' }],
  ['#/', { view: 'coverage' }],
  ['#/nowhere', { view: 'coverage' }],
  ['#/clips', { view: 'clips' }],
  ['#/syllabus', { view: 'syllabus' }],
  ['#/course', { view: 'course' }],
  ['#/aside', { view: 'aside' }],
  ['#/round', { view: 'round', topicId: null }],
  ['#/round/', { view: 'round', topicId: null }],
  [linkTo('round/t'), { view: 'round', topicId: 't' }],
  [linkTo('clip/c'), { view: 'clip', id: 'c' }],
  [linkTo('topic/t'), { view: 'topic', id: 't' }],
  [linkTo('topic/t/q'), { view: 'topic', id: 't', itemId: 'q' }],
  [linkTo('search?q=a/b?'), { view: 'search' }],
  ['#/clip', { view: 'coverage' }],
])('the address “%s” is %o', (hash, route) => {
  expect(routeOf(hash)).toEqual(route);
});

const PAGES: [string, string][] = [
  ['Clips', 'Clips'],
  ['Recall', 'Recall'],
  ['Syllabus', 'Syllabus'],
  ['Course', 'Course'],
];
test.each(PAGES)(
  'the page %s is reached by its link, says where it is, and takes the focus',
  async (link, heading) => {
    await openDesk('coverage', courseRows());
    await see('table');
    await follow(link);
    await screen.findByRole('heading', { name: heading, level: 1 });
    expect(screen.getByRole('link', { current: 'page' }).textContent).toBe(link);
    await waitFor(() => expect(document.activeElement).toBe(screen.getByRole('main')));
  },
);

test('a topic stands under the coverage', async () => {
  await openDesk(`topic/${deep.id}`, courseRows());
  await see('heading', '1.1 Deep water');
  expect(screen.getByRole('link', { current: 'page' }).textContent).toBe('Coverage');
});

test('the first link leads past the margin, and leaves the address alone', async () => {
  await openDesk('clips', courseRows());
  await press('To the page', 'link');
  expect(document.activeElement).toBe(screen.getByRole('main'));
  expect(location.hash).toBe('#/clips');
});

test('another course forgets what was aimed at in the one before', async () => {
  const other = { ...course, id: crypto.randomUUID(), name: 'Oceanography II' };
  const rows = courseRows({ courses: [course, other] });
  rows.settings = [{ ...rows.settings![0]!, aimedTopicId: tides.id }];
  const db = await openDesk('coverage', rows);
  const choice = await screen.findByLabelText<HTMLSelectElement>('Course');
  choice.value = other.id;
  choice.dispatchEvent(new Event('change', { bubbles: true }));
  await see('link', 'Bring in the syllabus');
  expect(await db.get('settings', 'settings')).toMatchObject({ courseId: other.id, aimedTopicId: null });
});

test('what is changed elsewhere is seen here', async () => {
  const db = await openDesk('coverage', courseRows());
  await see('table');
  await changeCourse(db, course.id, { name: 'Oceanography I' }, Date.now());
  await screen.findByText('Oceanography I');
});

test('trouble from elsewhere is told once', async () => {
  await rememberTrouble(new StudentError('errorPageClosed'));
  await openDesk('coverage', courseRows());
  expect((await see('alert')).textContent).toMatch(/^The browser lets no extension read this page/);
});

test('a deck of a newer version is refused with what to do', async () => {
  (await openDB('plumbline', migrations.version + 1)).close();
  renderInDeck(<Desk />);
  expect((await see('alert')).textContent).toMatch(/^This deck was written by a newer version/);
  expect(screen.queryByRole('main')).toBeNull();
});

test('a window of an older version stands in the way until it is closed; then the desk goes on', async () => {
  const [first] = migrations.after(0);
  const older = await openDB('plumbline', first!.to, {
    upgrade: (db, _from, _to, transaction) => void first!.run(db as never, transaction as never),
  });
  renderInDeck(<Desk />);
  expect((await see('alert')).textContent).toMatch(/^Another Plumbline page is still open/);
  expect(screen.queryByRole('heading')).toBeNull();
  older.close();
  await see('heading', 'Start a course');
  expect(screen.queryByRole('alert')).toBeNull();
});

test('a deck that is closed by a newer version says to reload', async () => {
  await openDesk('coverage', courseRows());
  await see('table');
  const newer = await openDB('plumbline', migrations.version + 1);
  expect((await see('alert')).textContent).toMatch(/^The deck was closed/);
  newer.close();
});

test('a reading that fails is told, and not left as an empty page', async () => {
  const reading = vi.spyOn(IDBObjectStore.prototype, 'getAll').mockImplementation(() => {
    throw new Error('the disk is gone');
  });
  await openDesk('coverage', courseRows());
  expect((await see('alert')).textContent).toContain('the disk is gone');
  reading.mockRestore();
});
