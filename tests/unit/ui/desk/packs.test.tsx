// @vitest-environment jsdom
import { fireEvent, screen, waitFor } from '@testing-library/preact';
import { expect, test, vi } from 'vitest';
import { type CoursePack, HEAVIEST_PACK } from '#lib/exchange/course-pack.ts';
import { aLesson, aQuestion } from '../../builders.ts';
import { aTaughtCourse, packed } from '../../exchange/a-pack.ts';
import { course, courseRows, deep, tides } from '../a-course.ts';
import { freshScreens, openDesk } from '../render-in-deck.tsx';
import { choose, press, read, see } from '../student.ts';

freshScreens();

const pack = packed(aTaughtCourse());
async function open(content: string | File): Promise<void> {
  const field = await screen.findByLabelText<HTMLInputElement>('Open a course pack …');
  const file = typeof content === 'string' ? new File([content], 'pack.json') : content;
  fireEvent.change(field, { target: { files: [file] } });
}
const openPack = (change: Partial<CoursePack> = {}) => open(JSON.stringify({ ...pack, ...change }));

test('with no course yet, a pack is looked at and taken in, and the coverage of its course opens', async () => {
  const db = await openDesk('');
  await openPack();
  await see('heading', 'Foundation Oceanography');
  await read('This is a new course. Exam day: 20 April 2026 · Topics: 3 · Statements: 1 · Questions: 2');
  expect(await db.count('courses')).toBe(0);
  await press('Take it in');
  await see('heading', 'Coverage');
  await see('rowheader', '2 Tides');
  expect(await db.count('questions')).toBe(2);
});

test('of very many questions the first are named and the rest are counted', async () => {
  await openDesk('');
  const questions = Array.from({ length: 305 }, (_, i) => ({
    ...pack.questions[0]!,
    id: crypto.randomUUID(),
    prompt: `Question ${i + 1}?`,
  }));
  await openPack({ questions });
  await read('Questions added: 305');
  await read('Question 300?');
  await read('and 5 more');
  expect(screen.queryByText('Question 301?')).toBeNull();
});

test('leaving it as it was changes nothing', async () => {
  const db = await openDesk('');
  await openPack();
  await press('Leave as it was');
  await waitFor(() => expect(screen.queryByText('Take it in')).toBeNull());
  expect(await db.count('courses')).toBe(0);
});

test('an update says what it adds, changes and drops, and what stays in the words of the student', async () => {
  const db = await openDesk('');
  await openPack();
  await press('Take it in');
  await see('heading', 'Coverage');
  const [question] = await db.getAll('questions');
  await db.put('questions', { ...question!, prompt: 'Mine?' });
  location.hash = '#/course';
  await openPack({
    topics: pack.topics.map((one) => (one.code === '2' ? { ...one, title: 'Tides & surges' } : one)),
    questions: pack.questions.map((one) => ({ ...one, answer: 'New.' })),
    lessons: [],
  });
  await read('Topics changed: 1');
  await read('Questions changed: 1');
  await read('Questions that you changed, kept in your words: 1');
  await read('Lessons, sheets and homework dropped: 1');
  const renamed = screen.getByText('2 Tides & surges').closest('li')!;
  expect(renamed.textContent).toBe('2 Tides 2 Tides & surges');
  await press('Take it in');
  await read('The course pack is taken in.');
  expect((await db.get('questions', question!.id))!.prompt).toBe('Mine?');
  await openPack({ savedAt: 1 });
  await read('This pack is older than the one you took in last.');
});

test('a pack joins a course that the student began before it came', async () => {
  const db = await openDesk('course', courseRows());
  await openPack();
  await read('This is a new course. Exam day: 20 April 2026 · Topics: 3 · Statements: 1 · Questions: 2');
  await choose('Take it in as', 'a part of my course Foundation Oceanography');
  await read('Statements added: 1');
  await press('Take it in');
  await read('The course pack is taken in.');
  expect(await db.count('courses')).toBe(1);
  const topics = await db.getAll('topics');
  // “1.1 Deep water” and “2 Tides” were there; “1 Waves at sea” is known by its code and a word.
  expect(topics.map(({ title }) => title).sort()).toEqual([
    'Deep water',
    'Shallow water',
    'Tides',
    'Waves at sea',
  ]);
  expect((await db.getAll('questions')).map(({ topicId }) => topicId).sort()).toEqual(
    [deep.id, tides.id].sort(),
  );
});

test.each([
  ['broken off', JSON.stringify(pack).slice(0, 900), /breaks off or is damaged/],
  ['other JSON', '{"a":1}', /is not a course pack/],
  ['newer', JSON.stringify({ ...pack, version: 2 }), /saved by a newer Plumbline/],
])('what is %s is told, and nothing changes', async (_what, text, told) => {
  const db = await openDesk('course', courseRows());
  await open(text);
  expect((await see('alert')).textContent).toMatch(told);
  expect(await db.getAll('courses')).toEqual([course]);
});

test('a file of 50 MB is not opened', async () => {
  await openDesk('course', courseRows());
  const file = new File([], 'pack.json');
  const bytes = vi.fn();
  Object.defineProperties(file, { size: { value: 50_000_000 }, arrayBuffer: { value: bytes } });
  expect(file.size).toBeGreaterThan(HEAVIEST_PACK);
  await open(file);
  expect((await see('alert')).textContent).toMatch(/This file has 50/);
  expect(bytes).not.toHaveBeenCalled();
});

test('what stands in a pack is shown as the text that it is', async () => {
  const title = '<img src=x onerror="alert(1)">\u202e<b>';
  await openDesk('course', courseRows());
  await openPack({ topics: pack.topics.map((one) => ({ ...one, title })) });
  await read(`1 ${title}`);
  expect(document.querySelector('#page li img, #page li b')).toBeNull();
});

test('a course is saved as a file that opens again, without what is the student’s', async () => {
  const inCourse = { courseId: course.id };
  const rows = courseRows({
    questions: [aQuestion({ ...inCourse, topicId: deep.id })],
    lessons: [aLesson({ ...inCourse, topicId: tides.id, held: true })],
  });
  let blob: Blob | undefined;
  const name = vi.fn();
  vi.spyOn(URL, 'createObjectURL').mockImplementation((given) => {
    blob = given as Blob;
    return 'blob:x';
  });
  vi.spyOn(HTMLAnchorElement.prototype, 'click').mockImplementation(function (this: HTMLAnchorElement) {
    name(this.download);
  });
  await openDesk('course', rows);
  await press('Save as a course pack');
  await read('Saved: Foundation Oceanography course pack.json');
  expect(name).toHaveBeenCalledWith('Foundation Oceanography course pack.json');
  const saved = JSON.parse(await blob!.text()) as CoursePack;
  expect(saved.topics.map(({ title }) => title)).toEqual([
    'Waves at sea',
    'Deep water',
    'Shallow water',
    'Tides',
  ]);
  expect(saved.lessons).toHaveLength(1);
  expect(JSON.stringify(saved)).not.toContain('held');
});

test('without a syllabus there is nothing to hand on', async () => {
  await openDesk('course', courseRows({ topics: [] }));
  await read('Bring in the syllabus first.');
  expect(screen.getByRole('button', { name: 'Save as a course pack' })).toHaveProperty('disabled', true);
});
