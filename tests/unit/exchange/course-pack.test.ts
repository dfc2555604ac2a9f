import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { PACK_VERSION, readPack, unknownParts } from '#lib/exchange/course-pack.ts';
import { fileName } from '#lib/exchange/file-name.ts';
import { packOf } from '#lib/exchange/save-pack.ts';
import { StudentError } from '#lib/model/student-error.ts';
import { MORNING, aQuestion, aTopic, newId } from '../builders.ts';
import { aTaughtCourse, packed } from './a-pack.ts';

const deck = aTaughtCourse();
const pack = packed(deck);
const text = JSON.stringify(pack);
const changed = (change: object): string => JSON.stringify({ ...pack, ...change });
const refused = (file: string): StudentError => {
  try {
    readPack(file);
  } catch (error) {
    if (error instanceof StudentError) return error;
    throw error;
  }
  throw new Error('it was read');
};

describe('a course saved as a pack', () => {
  test('reads back the same', () => {
    expect(readPack(text)).toEqual(pack);
  });

  test('holds what a class needs and nothing of the student', () => {
    expect(pack.topics.map(({ title }) => title)).toEqual(['Waves', 'Deep water', 'Tides']);
    expect(pack.questions[0]!.statementIds).toEqual([deck.statements[0]!.id]);
    expect(pack.course).toMatchObject({ examDay: '2026-04-20', targetSides: 8, targetQuestions: 100 });
    expect(text).not.toMatch(/clipId|held|createdAt|courseId/);
  });

  test('leaves out what stands under topics that were dropped', () => {
    const { courseId } = deck.topics[0]!;
    const dropped = aTopic({ courseId, off: true, dropped: true });
    const question = aQuestion({ courseId, topicId: dropped.id });
    const more = { ...deck, topics: [...deck.topics, dropped], questions: [...deck.questions, question] };
    expect(packed(more)).toEqual(pack);
  });

  test('has no circle, whatever the deck has', () => {
    const [waves, deep, tides] = deck.topics;
    const topics = [{ ...waves!, parentId: deep!.id }, deep!, { ...tides!, parentId: newId() }];
    const saved = packed({ ...deck, topics });
    expect(saved.topics.map(({ parentId }) => parentId)).toEqual([null, null, null]);
    expect(readPack(JSON.stringify(saved))).toEqual(saved);
  });

  test('hands on what this version does not know, also after it was taken in', () => {
    const papers = [{ id: newId(), title: 'Paper 1', parts: [{ marks: 5 }] }];
    const newer = readPack(changed({ papers, motto: 'Mind the undertow.' }));
    expect(unknownParts(newer)).toEqual({ papers, motto: 'Mind the undertow.' });
    expect(packOf(deck, newer, MORNING)).toEqual({ ...pack, papers, motto: 'Mind the undertow.' });
  });
});

/** The topics under other parents. */
const moved = (parentOf: (place: number) => string) =>
  pack.topics.map((topic, i) => ({ ...topic, parentId: parentOf(i) }));

describe('what is no good course pack is refused by what is wrong with it', () => {
  test.each([
    ['nothing', '', 'errorPackNone'],
    ['a text', 'Dear class', 'errorPackNone'],
    ['other JSON', '{"CFDocument":{}}', 'errorPackNone'],
    ['a list', '[1,2]', 'errorPackNone'],
    ['null', 'null', 'errorPackNone'],
    ['the name of the format alone', `"${pack.format}"`, 'errorPackNone'],
    ['a newer version', changed({ version: PACK_VERSION + 1, topics: 'elsewhere' }), 'errorPackNewer'],
    ['no topics', changed({ topics: [], statements: [], questions: [], lessons: [] }), 'errorPackWrong'],
    ['a version below the first', changed({ version: 0 }), 'errorPackWrong'],
    ['an id that is none', changed({ course: { ...pack.course, id: '../x' } }), 'errorPackWrong'],
    ['a day that is none', changed({ course: { ...pack.course, examDay: '31.2.2026' } }), 'errorPackWrong'],
    ['a topic twice', changed({ topics: [...pack.topics, pack.topics[0]] }), 'errorPackWrong'],
    ['a topic under none that is there', changed({ topics: moved(() => newId()) }), 'errorPackWrong'],
    ['topics in a circle', changed({ topics: moved((i) => pack.topics[(i + 1) % 3]!.id) }), 'errorPackWrong'],
    ['a question without its topic', changed({ topics: pack.topics.slice(0, 2) }), 'errorPackWrong'],
  ])('%s', (_what, file, error) => {
    expect(refused(file).message).toBe(error);
  });

  test('a tree without end is refused before any screen walks down it', () => {
    const chain = Array.from({ length: 5000 }, () => ({ ...pack.topics[0]!, id: newId() }));
    const topics = chain.map((topic, i) => ({ ...topic, parentId: chain[i - 1]?.id ?? null }));
    const file = changed({ topics, statements: [], questions: [], lessons: [] });
    expect(refused(file).message).toBe('errorPackWrong');
  });

  test('the place that is wrong is named', () => {
    const questions = [{ ...pack.questions[0]!, marks: 1000 }];
    expect(refused(changed({ questions })).values[0]).toBe('questions.0.marks');
  });

  test('cut off anywhere, it is told to be damaged, once it says what it is', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: text.length - 1 }), (length) => {
        const cut = text.slice(0, length);
        expect(refused(cut).message).toBe(
          cut.includes('"plumbline-course-pack"') ? 'errorPackDamaged' : 'errorPackNone',
        );
      }),
    );
  });

  test('whatever the JSON, it is read or told', () => {
    fc.assert(
      fc.property(fc.jsonValue(), fc.constantFrom('topics', 'course', 'lessons', 'more'), (value, part) => {
        try {
          readPack(changed({ [part]: value }));
        } catch (error) {
          expect(error).toBeInstanceOf(StudentError);
        }
      }),
    );
  });

  test('nested a hundred thousand deep, it is told', () => {
    const deep = '['.repeat(100_000) + ']'.repeat(100_000);
    const file = `${text.slice(0, -1)},"more":${deep}}`;
    expect(() => readPack(file)).toThrow(StudentError);
  });

  test('a key that reaches for what every object inherits from does nothing', () => {
    const read = readPack(`${text.slice(0, -1)},"__proto__":{"topics":[]},"more":{"__proto__":{"x":1}}}`);
    expect(unknownParts(read)).toEqual({ more: {} });
    expect(({} as Record<string, unknown>).x).toBeUndefined();
    expect(read.topics).toEqual(pack.topics);
  });
});

describe('the file is named after the course', () => {
  test.each([
    ['Foundation Oceanography', 'Foundation Oceanography course pack.json'],
    ['Waves: A/B "2026"?', 'Waves A B 2026 course pack.json'],
    ['../..', 'course pack.json'],
    ['gnp\u202eexe', 'gnp exe course pack.json'],
    ['Océanographie 海', 'Océanographie 海 course pack.json'],
  ])('%s', (name, file) => {
    expect(fileName(name, 'course pack', 'json')).toBe(file);
  });

  test('and never too long', () => {
    expect(fileName('🌊'.repeat(200), 'course pack', 'json').length).toBeLessThan(90);
  });
});
