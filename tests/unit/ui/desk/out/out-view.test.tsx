// @vitest-environment jsdom
import { fireEvent, screen, waitFor } from '@testing-library/preact';
import { beforeEach, expect, test, vi } from 'vitest';
import { announce } from '#lib/store/changes.ts';
import { CollectionModel } from '#tests/data/web-annotation.ts';
import { aLine, aQuestion } from '../../../builders.ts';
import { clipOf, course, courseRows, deep, tides } from '../../a-course.ts';
import { freshScreens, openDesk } from '../../render-in-deck.tsx';
import { choose, press, read, see } from '../../student.ts';

freshScreens();

// Blobs of the simulated browser cannot be stored; Node's can.
vi.hoisted(() => {
  globalThis.Blob = process.getBuiltinModule('node:buffer').Blob as never;
});

const lineOf = (over: Parameters<typeof aLine>[0]) => aLine({ courseId: course.id, ...over });
const picture = {
  id: crypto.randomUUID(),
  createdAt: 0,
  changedAt: 0,
  courseId: course.id,
  clipId: crypto.randomUUID(),
  bytes: new Blob(['x'], { type: 'image/png' }),
  type: 'image/png' as const,
  width: 3,
  height: 2,
  alt: 'Orbits',
};
const rows = courseRows({
  lines: [
    lineOf({ topicId: deep.id, lead: 'Speed', rest: 'is \\(c\\)', pictureIds: [picture.id] }),
    lineOf({ topicId: deep.id, lead: 'Known', leftOut: 'known', order: 1 }),
  ],
  questions: [aQuestion({ courseId: course.id, topicId: tides.id })],
  clips: [clipOf({ ownWords: 'Mine' })],
  pictures: [picture],
});

let saved: { name: string; blob: Blob }[] = [];
beforeEach(() => {
  saved = [];
  let blob: Blob;
  vi.spyOn(URL, 'createObjectURL').mockImplementation((given) => {
    blob = given as Blob;
    return 'blob:x';
  });
  vi.spyOn(HTMLAnchorElement.prototype, 'click').mockImplementation(function (this: HTMLAnchorElement) {
    saved.push({ name: this.download, blob });
  });
});

const pick = async (label: string | RegExp) => fireEvent.click(await screen.findByLabelText(label));
async function open(text: string, name = 'notes.md'): Promise<void> {
  const field = await screen.findByLabelText<HTMLInputElement>('Open a Markdown file …');
  fireEvent.change(field, { target: { files: [new File([text], name)] } });
}

test('a page for any browser holds what is chosen, and what is left out stays out', async () => {
  await openDesk('out', rows);
  await read('1 note line · 1 question · 1 clip');
  await press('Save as a file');
  await read('Saved: Foundation Oceanography notes.html');
  const doc = new DOMParser().parseFromString(await saved[0]!.blob.text(), 'text/html');
  expect([...doc.querySelectorAll('strong, dt, .own')].map((one) => one.textContent)).toEqual([
    'Speed',
    'In my own words: Mine',
    'Which waves travel faster in deep water? (1 mark)',
  ]);
  expect(doc.querySelector('li img')!.getAttribute('src')).toMatch(/^data:image\/png;base64,/);
  await pick('Questions and answers');
  await pick('Clips with your own words');
  await read('1 note line · 0 questions · 0 clips');
  await pick('Notes');
  await read(/There is nothing of this in the course yet/);
  expect((await see('button', 'Save as a file')).hasAttribute('disabled')).toBe(true);
});

test('clips as web annotations', async () => {
  await openDesk('out', rows);
  await pick(/Web annotations/);
  await read('0 note lines · 0 questions · 1 clip');
  await press('Save as a file');
  await read('Saved: Foundation Oceanography clips.jsonld');
  expect(saved[0]!.blob.type).toBe('application/ld+json');
  const collection = CollectionModel.parse(JSON.parse(await saved[0]!.blob.text()));
  expect(collection.first.items).toHaveLength(1);
});

test('Markdown that went out comes in again: what is there is not added twice, what is gone is as it was', async () => {
  const db = await openDesk('out', rows);
  await pick(/^Markdown/);
  await press('Save as a file');
  await read('Saved: Foundation Oceanography notes.md');
  const text = await saved[0]!.blob.text();
  await open(text);
  await read('1 line is in your notes already and is not added again.');
  expect((await see('button', 'Add 0 lines')).hasAttribute('disabled')).toBe(true);
  await press('Leave as it was');
  await db.clear('lines');
  announce(['lines']);
  await read('0 note lines · 1 question · 1 clip');
  await open(text);
  await press(/^Add \d line/);
  await read('1 line is added to your notes.');
  expect(await db.getAll('lines')).toMatchObject([
    { topicId: deep.id, lead: 'Speed', rest: 'is \\(c\\)', pictureIds: [picture.id], depth: 0, order: 0 },
  ]);
});

test('any Markdown: headings without a topic are for the student to place', async () => {
  const db = await openDesk('out', rows);
  await open('Prose.\n\n# Weather\n\n- Wind: moves\n  - Gust\n\n# Tides\n\n- **Spring** twice a month');
  await read('1 paragraph or table is no list and is left out. To keep it, paste it as own notes.');
  await see('button', 'Add 1 line');
  await choose(/^Weather/, '1.2 Shallow water');
  await press('Add 3 lines');
  await read('3 lines are added to your notes.');
  const added = (await db.getAll('lines')).filter(({ clipId, order }) => clipId === null && order > 1);
  added.sort((a, b) => a.order - b.order);
  expect(added).toMatchObject([
    { lead: 'Wind', rest: 'moves', depth: 0 },
    { lead: 'Gust', rest: '', depth: 1 },
    { topicId: tides.id, lead: 'Spring', rest: 'twice a month' },
  ]);
});

test('a file without a list says what to do, and nothing is added', async () => {
  const db = await openDesk('out', rows);
  await open('Only prose.');
  await read(/There is no list in this text/);
  const heavy = new File([''], 'x.md');
  Object.defineProperty(heavy, 'size', { value: 200_000_000 });
  fireEvent.change(screen.getByLabelText('Open a Markdown file …'), { target: { files: [heavy] } });
  await read(/This file has 200 MB/);
  await waitFor(async () => expect(await db.count('lines')).toBe(2));
});
