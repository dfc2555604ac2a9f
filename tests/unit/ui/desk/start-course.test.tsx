// @vitest-environment jsdom
import { screen, waitFor } from '@testing-library/preact';
import { expect, test } from 'vitest';
import { freshScreens, openDesk } from '../render-in-deck.tsx';
import { key, press, read, see, type } from '../student.ts';

freshScreens();

test('a first course is started with its name and leads to its syllabus', async () => {
  const db = await openDesk('coverage');
  await see('heading', 'Start a course');
  await type('Name of the course', 'Foundation Oceanography');
  await type('Exam day', '2026-05-14');
  key('Enter');
  await see('heading', 'Bring in the syllabus');
  const [course, ...others] = await db.getAll('courses');
  expect(others).toEqual([]);
  expect(course).toMatchObject({ name: 'Foundation Oceanography', examDay: '2026-05-14' });
  expect(await db.get('settings', 'settings')).toMatchObject({ courseId: course!.id });
  expect(location.hash).toBe('#/syllabus');
});

test('the exam day may be left empty', async () => {
  const db = await openDesk('coverage');
  await type('Name of the course', 'Foundation Oceanography');
  await press('Start');
  await waitFor(async () => expect(await db.getAll('courses')).toMatchObject([{ examDay: null }]));
});

test('a name of spaces is refused with a message, and what was filled in stays', async () => {
  const db = await openDesk('coverage');
  const field = await type('Name of the course', '   ');
  await press('Start');
  expect((await see('alert')).textContent).toContain('“name”');
  expect(field.value).toBe('   ');
  expect(await db.count('courses')).toBe(0);
});

test('without any name nothing is sent', async () => {
  const db = await openDesk('coverage');
  const field = (await see('textbox', 'Name of the course')) as HTMLInputElement;
  await press('Start');
  expect(field.validity.valueMissing).toBe(true);
  expect(await db.count('courses')).toBe(0);
  expect(screen.queryByRole('alert')).toBeNull();
});

test('what stays on the device is said on the first page', async () => {
  await openDesk('coverage');
  await read(/Everything stays on this device/);
});
