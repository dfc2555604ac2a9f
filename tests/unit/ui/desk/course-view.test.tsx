// @vitest-environment jsdom
import { screen, waitFor } from '@testing-library/preact';
import { expect, test } from 'vitest';
import { course, courseRows } from '../a-course.ts';
import { freshScreens, openDesk } from '../render-in-deck.tsx';
import { choose, follow, press, read, see } from '../student.ts';

freshScreens();

/** The fields of this course; those of another course have the same labels and stand below. */
const field = async (label: string) => (await screen.findAllByLabelText<HTMLInputElement>(label))[0]!;
async function fill(label: string, value: string): Promise<void> {
  const input = await field(label);
  input.value = value;
  input.dispatchEvent(new Event('input', { bubbles: true }));
}

test('its name and exam day are changed, and that is said until something changes again', async () => {
  const db = await openDesk('course', courseRows());
  await fill('Name of the course', 'Oceanography I');
  await fill('Exam day', '2026-06-01');
  await press('Save');
  await read('Saved');
  expect(await db.get('courses', course.id)).toMatchObject({ name: 'Oceanography I', examDay: '2026-06-01' });
  expect(await screen.findAllByText('Oceanography I')).toHaveLength(1);
  await fill('Exam day', '');
  await waitFor(() => expect(screen.queryByText('Saved')).toBeNull());
  await press('Save');
  await waitFor(async () => expect((await db.get('courses', course.id))!.examDay).toBeNull());
});

test('a name of spaces is refused, and the course stays as it was', async () => {
  const db = await openDesk('course', courseRows());
  await fill('Name of the course', '  ');
  await press('Save');
  expect((await see('alert')).textContent).toContain('“name”');
  expect(screen.queryByText('Saved')).toBeNull();
  expect(await db.get('courses', course.id)).toEqual(course);
});

test('the length of a round is kept', async () => {
  const db = await openDesk('course', courseRows());
  await choose('Length of a round', '5 minutes');
  await waitFor(async () => expect((await db.get('settings', 'settings'))!.roundMinutes).toBe(5));
  const select = screen.getByLabelText<HTMLSelectElement>('Length of a round');
  await waitFor(() => expect(select.value).toBe('5'));
});

test('a further course becomes the current one, and the one before can be chosen again', async () => {
  const db = await openDesk('course', courseRows());
  const names = await screen.findAllByLabelText<HTMLInputElement>('Name of the course');
  names[1]!.value = 'Oceanography II';
  names[1]!.dispatchEvent(new Event('input', { bubbles: true }));
  await press('Start');
  await see('heading', 'Bring in the syllabus');
  expect(await db.count('courses')).toBe(2);
  await choose('Course', 'Foundation Oceanography');
  await see('heading', 'Bring in a newer version');
  expect((await db.get('settings', 'settings'))!.courseId).toBe(course.id);
});

test('what was set aside is reached from here', async () => {
  await openDesk('course', courseRows());
  await follow('Set aside');
  await see('heading', 'Set aside');
});
