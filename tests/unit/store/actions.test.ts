import { expect, test } from 'vitest';
import { recordAttempt, cacheNextUp } from '#lib/store/actions/attempts.ts';
import { changeClip, clipsFrom, keepClip } from '#lib/store/actions/clips.ts';
import {
  changeCourse,
  changeSettings,
  readSettings,
  saveSyllabus,
  startCourse,
} from '#lib/store/actions/courses.ts';
import { addLine, addQuestion, changeQuestion } from '#lib/store/actions/items.ts';
import { addLesson, changeLesson } from '#lib/store/actions/lessons.ts';
import { moveContents } from '#lib/store/actions/topics.ts';
import { readFirstUp } from '#lib/store/first-up.ts';
import { readAll } from '#lib/store/read.ts';
import { aClip, aLesson, aLine, anAttempt, aReason, aQuestion, aTopic, newId, MORNING } from '../builders.ts';
import { freshDeck } from './fresh-deck.ts';

const PAGE = {
  kind: 'page' as const,
  url: 'http://127.0.0.1/waves',
  title: 'Waves',
  site: 'The Lagoonery',
  author: '',
  published: '',
  licence: '',
};
const draftOf = (clip: ReturnType<typeof aClip>) => {
  const {
    id: _id,
    sourceId: _source,
    createdAt: _made,
    changedAt: _changed,
    pictureIds: _pictures,
    ...draft
  } = clip;
  return { ...draft, pictures: [] };
};

test('a course that is started becomes the current one', async () => {
  const db = await freshDeck();
  const course = await startCourse(db, { name: 'Foundation Oceanography', examDay: null }, MORNING);
  expect((await readSettings(db)).courseId).toBe(course.id);
  await changeCourse(db, course.id, { examDay: '2026-05-01' }, MORNING + 1);
  expect((await readAll(db, 'courses'))[0]).toMatchObject({ examDay: '2026-05-01', changedAt: MORNING + 1 });
});

test('a course without a name is refused by name of the field', async () => {
  const db = await freshDeck();
  const refused = startCourse(db, { name: '  ', examDay: null }, MORNING);
  await expect(refused).rejects.toMatchObject({
    message: 'errorFieldWrong',
    values: ['name', expect.any(String)],
  });
  expect(await db.count('courses')).toBe(0);
});

test('two clips of one page share its source; the aim is reached with the first', async () => {
  const db = await freshDeck();
  const course = await startCourse(db, { name: 'Oceanography', examDay: null }, MORNING);
  await changeSettings(db, { aimedTopicId: newId() });
  const draft = draftOf(aClip({ courseId: course.id }));
  const never = () => false;
  const first = await keepClip(db, draft, PAGE, never, MORNING);
  const second = await keepClip(db, { ...draft, text: 'Another one.' }, PAGE, never, MORNING + 1);
  expect(second.sourceId).toBe(first.sourceId);
  expect(await clipsFrom(db, PAGE.url, course.id)).toHaveLength(2);
  expect((await readSettings(db)).aimedTopicId).toBeNull();
});

test('a passage that is there already is changed, not doubled, even when two slips save at once', async () => {
  const db = await freshDeck();
  const course = await startCourse(db, { name: 'Oceanography', examDay: null }, MORNING);
  const draft = draftOf(aClip({ courseId: course.id }));
  const isSame = ({ text }: { text: string }) => text === draft.text;
  const [one, two] = await Promise.all([
    keepClip(db, { ...draft, ownWords: 'first' }, PAGE, isSame, MORNING),
    keepClip(db, { ...draft, ownWords: 'second' }, PAGE, isSame, MORNING + 1),
  ]);
  expect(two.id).toBe(one.id);
  expect(await readAll(db, 'clips')).toMatchObject([
    { ownWords: 'second', createdAt: MORNING, changedAt: MORNING + 1 },
  ]);
});

test('pictures are kept with their clip', async () => {
  const db = await freshDeck();
  const picture = {
    bytes: new Blob(['png']),
    type: 'image/png' as const,
    width: 3,
    height: 2,
    alt: 'A wave',
  };
  const draft = { ...draftOf(aClip()), pictures: [picture, { ...picture, alt: '' }] };
  const clip = await keepClip(db, draft, PAGE, () => false, MORNING);
  const pictures = await readAll(db, 'pictures');
  expect(clip.pictureIds.map((id) => pictures.find((one) => one.id === id)?.alt)).toEqual(['A wave', '']);
  expect(pictures.map(({ clipId }) => clipId)).toEqual([clip.id, clip.id]);
});

test('a clip of nothing is refused, and no picture or source stays behind', async () => {
  const db = await freshDeck();
  const empty = keepClip(db, { ...draftOf(aClip()), text: '' }, PAGE, () => false, MORNING);
  await expect(empty).rejects.toMatchObject({ message: 'errorFieldWrong' });
  expect([await db.count('clips'), await db.count('sources')]).toEqual([0, 0]);
});

test('an address that is no web address is refused, and neither clip nor source is kept', async () => {
  const db = await freshDeck();
  const draft = draftOf(aClip());
  for (const url of ['javascript:alert(1)', 'data:text/html,x', 'chrome://settings']) {
    const refused = keepClip(db, draft, { ...PAGE, url }, () => false, MORNING);
    await expect(refused).rejects.toMatchObject({ message: 'errorFieldWrong' });
  }
  expect([await db.count('clips'), await db.count('sources')]).toEqual([0, 0]);
});

test('a clip that is gone cannot be changed, and the student is told', async () => {
  const db = await freshDeck();
  await expect(changeClip(db, newId(), { ownWords: 'x' }, MORNING)).rejects.toMatchObject({
    message: 'errorClipGone',
  });
});

test('a syllabus is saved whole or not at all', async () => {
  const db = await freshDeck();
  const courseId = newId();
  const good = aTopic({ courseId });
  await saveSyllabus(db, courseId, { topics: [good], statements: [] });
  const bad = { ...aTopic({ courseId }), title: '' };
  const refused = saveSyllabus(db, courseId, { topics: [{ ...good, title: 'Tides' }, bad], statements: [] });
  await expect(refused).rejects.toMatchObject({ message: 'errorFieldWrong' });
  expect(await readAll(db, 'topics')).toEqual([good]);
});

test('lines come in the order in which they were written', async () => {
  const db = await freshDeck();
  const { courseId, topicId } = aLine();
  const write = (lead: string) => addLine(db, { courseId, topicId, clipId: null, lead, rest: 'x' }, MORNING);
  await write('one');
  await write('two');
  expect((await readAll(db, 'lines')).map(({ lead, order }) => [lead, order]).sort()).toEqual([
    ['one', 0],
    ['two', 1],
  ]);
});

test('an attempt is kept for good; its item makes room for the next in the cache', async () => {
  const db = await freshDeck();
  const course = await startCourse(db, { name: 'Oceanography', examDay: null }, MORNING);
  const fields = { courseId: course.id, topicId: newId(), clipId: null, answer: 'a', marks: 1 };
  const first = await addQuestion(db, { ...fields, prompt: 'one?' }, MORNING);
  const second = await addQuestion(db, { ...fields, prompt: 'two?' }, MORNING);
  const items = [first, second].map(({ id }) => ({ kind: 'question' as const, id, reason: aReason() }));
  await cacheNextUp(db, { courseId: course.id, at: MORNING, items });
  const asked = async () => (await readFirstUp(db)).queue.map(({ item }) => item.asks);
  expect(await asked()).toEqual(['one?', 'two?']);
  await recordAttempt(db, anAttempt({ courseId: course.id, itemId: first.id }));
  expect(await asked()).toEqual(['two?']);
  const twice = recordAttempt(db, { ...(await readAll(db, 'attempts'))[0]!, marks: 0 });
  await expect(twice).rejects.toMatchObject({ message: 'errorNotSaved' });
  expect((await readAll(db, 'attempts')).map(({ marks }) => marks)).toEqual([1]);
});

test('a changed question leaves the cache of what comes next empty', async () => {
  const db = await freshDeck();
  const course = await startCourse(db, { name: 'Oceanography', examDay: null }, MORNING);
  const { id: _id, createdAt: _c, changedAt: _d, ...fields } = aQuestion({ courseId: course.id });
  const question = await addQuestion(db, fields, MORNING);
  const items = [{ kind: 'question' as const, id: question.id, reason: aReason() }];
  await cacheNextUp(db, { courseId: course.id, at: MORNING, items });
  await changeQuestion(db, question.id, { prompt: 'Changed?' }, MORNING + 1);
  expect((await readFirstUp(db)).queue).toEqual([]);
});

test('what stands under a topic moves to another as a whole; attempts stay the facts they are', async () => {
  const db = await freshDeck();
  const courseId = newId();
  const [old, next] = [aTopic({ courseId, off: true, dropped: true }), aTopic({ courseId })];
  const [clip, both, other] = [[old.id], [old.id, next.id], [newId()]].map((topicIds) =>
    aClip({ courseId, topicIds }),
  );
  const question = aQuestion({ courseId, topicId: old.id });
  const line = aLine({ courseId, topicId: old.id });
  const lesson = aLesson({ courseId, topicId: old.id });
  const attempt = anAttempt({ courseId, topicId: old.id, itemId: question.id });
  await saveSyllabus(db, courseId, { topics: [old, next], statements: [] });
  for (const one of [clip!, both!, other!]) await db.put('clips', one);
  await db.put('questions', question);
  await db.put('lines', line);
  await db.put('lessons', lesson);
  await recordAttempt(db, attempt);
  await moveContents(db, old.id, next.id, MORNING + 5);
  const clips = new Map((await readAll(db, 'clips')).map((one) => [one.id, one]));
  expect(clips.get(clip!.id)).toEqual({ ...clip, topicIds: [next.id], changedAt: MORNING + 5 });
  expect(clips.get(both!.id)).toEqual({ ...both, topicIds: [next.id], changedAt: MORNING + 5 });
  expect(clips.get(other!.id)).toEqual(other);
  expect(await readAll(db, 'questions')).toEqual([{ ...question, topicId: next.id, changedAt: MORNING + 5 }]);
  expect(await readAll(db, 'lines')).toEqual([{ ...line, topicId: next.id, changedAt: MORNING + 5 }]);
  expect(await readAll(db, 'lessons')).toEqual([{ ...lesson, topicId: next.id, changedAt: MORNING + 5 }]);
  expect(await readAll(db, 'attempts')).toMatchObject([{ topicId: old.id }]);
});

test('nothing moves to a topic that is gone or was dropped', async () => {
  const db = await freshDeck();
  const [from, dropped] = [aTopic(), aTopic({ off: true, dropped: true })];
  const clip = aClip({ topicIds: [from.id] });
  await db.put('topics', dropped);
  await db.put('clips', clip);
  for (const to of [dropped.id, newId()])
    await expect(moveContents(db, from.id, to, MORNING)).rejects.toMatchObject({ message: 'errorTopicGone' });
  expect(await readAll(db, 'clips')).toEqual([clip]);
});

test('a lesson is entered and held; one without a title is refused, and one that is gone is told', async () => {
  const db = await freshDeck();
  const { id: _id, createdAt: _c, changedAt: _d, ...fields } = aLesson();
  const lesson = await addLesson(db, fields, MORNING);
  await changeLesson(db, lesson.id, { held: true }, MORNING + 1);
  expect(await readAll(db, 'lessons')).toEqual([{ ...lesson, held: true, changedAt: MORNING + 1 }]);
  await expect(addLesson(db, { ...fields, title: ' ' }, MORNING)).rejects.toMatchObject({
    message: 'errorFieldWrong',
  });
  await expect(changeLesson(db, newId(), { held: true }, MORNING)).rejects.toMatchObject({
    message: 'errorLessonGone',
  });
});
