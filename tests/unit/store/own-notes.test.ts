import 'fake-indexeddb/auto';
import { beforeEach, expect, test } from 'vitest';
import { keepOwnNotes } from '#lib/store/actions/own-notes.ts';
import { addLines } from '#lib/store/actions/notes-in.ts';
import { readSteps, turnStep } from '#lib/store/steps.ts';
import type { Db } from '#lib/store/schema.ts';
import { coverageOf } from '#lib/syllabus/coverage.ts';
import { MORNING, aClip, aCourse, aLine, aTopic, newId } from '../builders.ts';
import { freshDeck } from './fresh-deck.ts';

let db: Db;
beforeEach(async () => {
  db = await freshDeck();
});

const course = aCourse();
const topic = aTopic({ courseId: course.id });
const page = () => ({
  kind: 'own' as const,
  url: `urn:uuid:${crypto.randomUUID()}`,
  title: '',
  site: '',
  author: '',
  published: '',
  licence: '',
});
const draft = (text: string) => ({
  courseId: course.id,
  topicIds: [topic.id],
  text,
  html: `<p>${text}</p>`,
  ownWords: '',
  unclear: false,
  headings: [],
  selectors: [],
  pictures: [],
});

test('all clips of one note are kept in their order under one source, or none is', async () => {
  const clips = await keepOwnNotes(db, [draft('a'), draft('b'), draft('c')], page(), MORNING);
  const [source] = await db.getAll('sources');
  expect(source).toMatchObject({ kind: 'own', title: '' });
  const kept = (await db.getAll('clips')).sort((a, b) => a.createdAt - b.createdAt);
  expect(kept.map(({ text }) => text)).toEqual(['a', 'b', 'c']);
  expect(new Set(clips.map(({ sourceId }) => sourceId))).toEqual(new Set([source!.id]));
  await expect(keepOwnNotes(db, [draft('d'), draft('x'.repeat(100_001))], page(), MORNING)).rejects.toThrow(
    'errorFieldWrong',
  );
  expect([await db.count('clips'), await db.count('sources')]).toEqual([3, 1]);
});

test('own notes are a source: beside a page they are the second one, two of the same note are one', async () => {
  await keepOwnNotes(db, [draft('a'), draft('b')], page(), MORNING);
  const own = await db.getAll('clips');
  const covered = (clips: typeof own) => {
    const input = { topics: [topic], statements: [], lessons: [], clips, questions: [], lines: [] };
    return coverageOf({ ...input, attempted: new Set(), secured: new Set() }).covered;
  };
  expect(covered(own)).toMatchObject({ gathered: 1, secondSource: 0 });
  expect(covered([...own, aClip({ topicIds: [topic.id] })])).toMatchObject({ secondSource: 1 });
});

test('lines come in behind those that are there, all or none, with the pictures that the course has', async () => {
  await db.add('lines', aLine({ courseId: course.id, order: 7 }));
  const line = (lead: string) => ({ topicId: topic.id, lead, rest: '', depth: 1, pictureIds: [newId()] });
  await addLines(db, course.id, [line('a'), line('b')], MORNING);
  const rows = (await db.getAllFromIndex('lines', 'course', course.id)).sort((a, b) => a.order - b.order);
  expect(rows.map(({ lead, order }) => [lead, order])).toEqual([
    ['Deep-water speed', 7],
    ['a', 8],
    ['b', 9],
  ]);
  expect(rows[1]).toMatchObject({ depth: 1, pictureIds: [], clipId: null, leftOut: null });
  await expect(addLines(db, course.id, [line('c'), line('x'.repeat(20_001))], MORNING)).rejects.toThrow(
    'errorFieldWrong',
  );
  expect(await db.count('lines')).toBe(3);
  // One step takes all of them away again, and leaves the one before.
  const { undo } = await readSteps(db);
  expect(await turnStep(db, undo!.key, 'undo', MORNING)).toBe(undo!.name);
  expect((await db.getAll('lines')).map(({ order }) => order)).toEqual([7]);
  expect(await turnStep(db, undo!.key, 'redo', MORNING)).toBe(undo!.name);
  expect(await db.count('lines')).toBe(3);
});
