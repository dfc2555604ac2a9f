import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { CoursePack } from '#lib/exchange/course-pack.ts';
import { type PackedDeck, mergePack } from '#lib/exchange/merge-pack.ts';
import { MORNING, aLesson, aQuestion, aStatement, aTopic, newId } from '../builders.ts';
import { aTaughtCourse, afterMerge, packed } from './a-pack.ts';

const taught = aTaughtCourse();
const first = packed(taught);
const NOW = MORNING + 1000;
const LATER = NOW + 1000;

/** The student's deck after the first pack. */
const taken = afterMerge(null, mergePack(null, null, first, NOW));
const update = (change: (pack: CoursePack) => Partial<CoursePack>): CoursePack => ({
  ...first,
  ...change(structuredClone(first)),
});
const merge = (deck: PackedDeck, pack: CoursePack, last: CoursePack | null = first) => {
  const merged = mergePack(deck, last, pack, LATER);
  return { ...merged, after: afterMerge(deck, merged) };
};
const titles = (deck: PackedDeck): string[] =>
  deck.topics
    .filter(({ dropped }) => !dropped)
    .toSorted((a, b) => a.order - b.order)
    .map(({ title }) => title);

describe('a pack of a course that is not there', () => {
  test('brings the course whole, under the ids of the pack', () => {
    expect(packed(taken)).toEqual(first);
    expect(taken.lessons[0]).toMatchObject({ held: false, createdAt: NOW });
    expect(taken.questions[0]).toMatchObject({ clipId: null, courseId: taught.course.id });
  });

  test('taken in again it changes nothing', () => {
    const { put, remove, changes } = merge(taken, first);
    expect([put.topics, put.statements, put.questions, put.lessons]).toEqual([[], [], [], []]);
    expect(Object.values(remove).flat()).toEqual([]);
    expect(changes.course).toMatchObject({ isChanged: false, isKept: false });
  });
});

describe('an update', () => {
  test('adds, rewords and moves what the student left as it was', () => {
    const added = { ...first.topics[0]!, id: newId(), order: 9, title: 'Ice' };
    const pack = update(({ topics, questions, course }) => ({
      topics: [topics[0]!, { ...topics[1]!, title: 'Waves in deep water' }, topics[2]!, added],
      questions: [{ ...questions[0]!, answer: 'Those with the longer wavelength.' }, questions[1]!],
      course: { ...course, examDay: '2026-05-04' },
    }));
    const { after, changes } = merge(taken, pack);
    expect(titles(after)).toEqual(['Waves', 'Waves in deep water', 'Tides', 'Ice']);
    expect(after.questions[0]!.answer).toBe('Those with the longer wavelength.');
    expect(after.course.examDay).toBe('2026-05-04');
    expect(changes.topics.added.map(({ title }) => title)).toEqual(['Ice']);
    expect(changes.topics.changed.map(({ title }) => title)).toEqual(['Waves in deep water']);
    expect(changes.questions.changed).toHaveLength(1);
  });

  test('a question that the student changed keeps the wording of the student, as a whole, and that is said', () => {
    const mine = taken.questions.map((one, i) => (i === 0 ? { ...one, prompt: 'Which run ahead?' } : one));
    const pack = update(({ questions }) => ({
      questions: questions.map((one) => ({ ...one, answer: `${one.answer} Always.` })),
    }));
    const { after, changes } = merge({ ...taken, questions: mine }, pack);
    expect(after.questions.map(({ prompt, answer }) => `${prompt} ${answer}`)).toEqual([
      'Which run ahead? The longer ones.',
      'What drives the tides? The longer ones. Always.',
    ]);
    expect(changes.questions.kept.map(({ prompt }) => prompt)).toEqual(['Which run ahead?']);
  });

  test('an exam day that the student set stays, unless the student never touched it', () => {
    const deck = { ...taken, course: { ...taken.course, examDay: '2026-04-22' } };
    const { after, changes } = merge(
      deck,
      update(({ course }) => ({ course: { ...course, examDay: '2026-05-04', targetSides: 6 } })),
    );
    expect(after.course).toMatchObject({ examDay: '2026-04-22', targetSides: 6 });
    expect(changes.course).toMatchObject({ isChanged: true, isKept: true });
  });

  test('a topic that is dropped is marked so, stays, and comes back with a later pack', () => {
    const without = update(({ topics, questions }) => ({
      topics: topics.slice(0, 2),
      questions: questions.slice(0, 1),
    }));
    const { after, changes } = merge(taken, without);
    expect(changes.topics.dropped.map(({ title }) => title)).toEqual(['Tides']);
    expect(after.topics.find(({ title }) => title === 'Tides')).toMatchObject({ off: true, dropped: true });
    expect(after.questions).toHaveLength(1);
    const again = merge(after, first, without);
    expect(again.changes.topics.added.map(({ title }) => title)).toEqual(['Tides']);
    expect(titles(again.after)).toEqual(['Waves', 'Deep water', 'Tides']);
    expect(again.after.questions).toHaveLength(2);
  });

  test('what the pack drops stays where the student changed or used it', () => {
    const empty = update(() => ({ questions: [], lessons: [], statements: [] }));
    const [changed, recalled] = taken.questions;
    const deck = {
      ...taken,
      questions: [{ ...changed!, answer: 'Long ones.' }, recalled!],
      lessons: [{ ...taken.lessons[0]!, held: true }],
      attempted: new Set([recalled!.id]),
    };
    const { after, changes } = merge(deck, empty);
    expect(after.questions).toEqual(deck.questions);
    expect(after.lessons).toEqual(deck.lessons);
    expect(after.statements).toEqual([]);
    expect([changes.questions.staying.length, changes.lessons.staying.length]).toEqual([2, 1]);
    expect(merge(taken, empty).after.questions).toEqual([]);
  });

  test('what the student deleted does not come back', () => {
    const deck = { ...taken, questions: taken.questions.slice(1), statements: [] };
    const pack = update(({ questions }) => ({ questions: questions.map((one) => ({ ...one, marks: 3 })) }));
    const { after } = merge(deck, pack);
    expect(after.questions.map(({ id, marks }) => [id, marks])).toEqual([[taken.questions[1]!.id, 3]]);
    expect(after.statements).toEqual([]);
  });

  test('what is the student’s own stays in its place', () => {
    const { courseId } = taken.topics[0]!;
    const own = aTopic({ courseId, order: 3, code: '', title: 'Seiches' });
    const deck = {
      ...taken,
      topics: [...taken.topics.slice(0, 2), own, { ...taken.topics[2]!, order: 4 }],
      questions: [...taken.questions, aQuestion({ courseId, topicId: own.id })],
      lessons: [...taken.lessons, aLesson({ courseId, topicId: own.id })],
      statements: [...taken.statements, aStatement({ courseId, topicId: own.id, order: 5 })],
    };
    const pack = update(({ topics }) => ({
      topics: [...topics, { ...topics[2]!, id: newId(), order: 4, title: 'Ice' }],
    }));
    const { after } = merge(deck, pack);
    expect(titles(after)).toEqual(['Waves', 'Deep water', 'Seiches', 'Tides', 'Ice']);
    expect(after.questions).toEqual(deck.questions);
    expect(after.lessons).toEqual(deck.lessons);
    expect(after.statements.map(({ id }) => id)).toEqual(deck.statements.map(({ id }) => id));
  });

  test('what stood below a topic that is dropped moves up, and stays in sight', () => {
    const { courseId, id } = taken.topics[1]!;
    const own = aTopic({ courseId, order: 8, title: 'Seiches', parentId: id });
    const pack = update(({ topics }) => ({
      topics: topics.filter((topic) => topic.id !== id),
      statements: [],
      questions: [],
      lessons: [],
    }));
    const { after } = merge({ ...taken, topics: [...taken.topics, own] }, pack);
    expect(after.topics.find(({ title }) => title === 'Seiches')!.parentId).toBe(taken.topics[0]!.id);
  });

  test('without a last pack nobody knows who changed what: what is there stays', () => {
    const pack = update(({ topics }) => ({ topics: topics.map((one) => ({ ...one, title: 'New' })) }));
    const { after, changes } = merge(taken, pack, null);
    expect(titles(after)).toEqual(titles(taken));
    expect(changes.topics.kept).toHaveLength(3);
  });
});

test('whatever teacher and student do, taking the same pack in twice changes nothing the second time', () => {
  const flags = fc.array(fc.boolean(), { minLength: 3, maxLength: 3 });
  fc.assert(
    fc.property(flags, flags, flags, flags, (theirWords, theirDrops, ourWords, ourDeletes) => {
      const pack = update(({ questions, topics }) => ({
        topics: topics.map((one, i) => ({ ...one, title: theirWords[i] ? 'New title' : one.title })),
        questions: questions
          .filter((_, i) => !theirDrops[i])
          .map((one, i) => ({ ...one, prompt: theirWords[i] ? 'New?' : one.prompt })),
      }));
      const deck = {
        ...taken,
        topics: taken.topics.map((one, i) => ({ ...one, title: ourWords[i] ? 'My title' : one.title })),
        questions: taken.questions
          .filter((_, i) => !ourDeletes[i])
          .map((one, i) => ({ ...one, answer: ourWords[i] ? 'My answer' : one.answer })),
      };
      const { after } = merge(deck, pack);
      expect(merge(after, pack, pack).after).toEqual(after);
      // Nothing that the student wrote is lost.
      for (const one of deck.questions.filter(({ answer }) => answer === 'My answer'))
        expect(after.questions).toContainEqual(one);
      expect(after.topics.filter(({ title }) => title === 'My title')).toHaveLength(
        deck.topics.filter(({ title }) => title === 'My title').length,
      );
    }),
  );
});
