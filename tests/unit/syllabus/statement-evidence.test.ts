import { describe, expect, test } from 'vitest';
import { type CoverageInput, coverageOf } from '#lib/syllabus/coverage.ts';
import { statementEvidence } from '#lib/syllabus/statement-evidence.ts';
import { aClip, aLesson, aLine, aQuestion, aStatement, aTopic, newId } from '../builders.ts';

const topic = aTopic({ order: 1 });
const other = aTopic({ order: 2 });
const under = { topicId: topic.id };
const [state, sketch] = [aStatement(under), aStatement({ ...under, order: 1 })];
const clip = (over: Parameters<typeof aClip>[0] = {}) => aClip({ topicIds: [topic.id], ...over });
const NONE = {
  clips: [],
  questions: [],
  lines: [],
  attempted: new Set<string>(),
  secured: new Set<string>(),
};
const evidence = (over: Partial<typeof NONE> | object) =>
  statementEvidence([state!, sketch!], { ...NONE, ...over });

describe('the evidence of a statement', () => {
  test('counts what was ticked, once each, and clips that are understood apart', () => {
    const clips = [
      clip({ statementIds: [state!.id, state!.id], ownWords: 'yes' }),
      clip({ statementIds: [state!.id], unclear: true, ownWords: 'hm' }),
      clip({ statementIds: [state!.id] }),
      clip(),
    ];
    expect(evidence({ clips }).get(state!.id)).toMatchObject({ clips: 3, understood: 1 });
    expect(evidence({ clips }).get(sketch!.id)).toEqual({
      clips: 0,
      understood: 0,
      items: 0,
      attempted: 0,
      secured: 0,
    });
  });

  test('counts questions and lines alike, recalled and secured', () => {
    const question = aQuestion({ ...under, statementIds: [state!.id, sketch!.id] });
    const line = aLine({ ...under, statementIds: [sketch!.id] });
    const found = evidence({
      questions: [question],
      lines: [line],
      attempted: new Set([question.id, line.id]),
      secured: new Set([line.id]),
    });
    expect(found.get(state!.id)).toMatchObject({ items: 1, attempted: 1, secured: 0 });
    expect(found.get(sketch!.id)).toMatchObject({ items: 2, attempted: 2, secured: 1 });
  });

  test('does not count what was moved to another topic, what is gone, and what is switched off', () => {
    const statementIds = [state!.id, newId()];
    const moved = {
      clips: [aClip({ topicIds: [other.id], statementIds })],
      questions: [aQuestion({ topicId: other.id, statementIds })],
    };
    expect(evidence(moved).get(state!.id)).toMatchObject({ clips: 0, items: 0 });
    const off = { ...state!, off: true };
    expect(statementEvidence([off], { ...NONE, clips: [clip({ statementIds })] }).size).toBe(0);
  });
});

describe('coverage with statements and lessons', () => {
  const cover = (over: Partial<CoverageInput>) =>
    coverageOf({ ...NONE, topics: [topic], statements: [state!, sketch!], lessons: [], ...over }).topics[0]!;
  const kinds = (over: Partial<CoverageInput>) => cover(over).gaps.map(({ kind }) => kind);

  test('says how many statements have an explanation and a question', () => {
    const { answered } = cover({
      clips: [clip({ statementIds: [state!.id] }), clip()],
      questions: [aQuestion({ ...under, statementIds: [sketch!.id, state!.id] })],
    }).evidence;
    expect(answered).toEqual({ statements: 2, explained: 1, asked: 2, unticked: 1 });
  });

  test('asks first to tick what the clips explain, then for a clip on the rest', () => {
    expect(kinds({ clips: [clip(), clip({ statementIds: [state!.id] })] })).toContain('statement-unticked');
    const ticked = kinds({ clips: [clip({ statementIds: [state!.id] })] });
    expect(ticked).toContain('statement-unexplained');
    expect(ticked).not.toContain('statement-unticked');
    const all = kinds({ clips: [clip({ statementIds: [state!.id, sketch!.id] }), clip()] });
    expect(all.filter((kind) => kind.startsWith('statement'))).toEqual([]);
  });

  test('asks for a question on what nothing asks, once there are questions', () => {
    expect(kinds({})).not.toContain('statement-unasked');
    expect(kinds({ questions: [aQuestion(under)] })).toContain('statement-unasked');
    const both = aQuestion({ ...under, statementIds: [state!.id, sketch!.id] });
    expect(kinds({ questions: [both] })).not.toContain('statement-unasked');
  });

  test('a topic without statements has no such gap', () => {
    const found = kinds({ statements: [], clips: [clip()], questions: [aQuestion(under)] });
    expect(found.filter((kind) => kind.startsWith('statement'))).toEqual([]);
  });

  test('counts lessons, and asks to chase what is missing', () => {
    const lessons = [aLesson({ ...under, held: true }), aLesson(under), aLesson({ topicId: other.id })];
    const row = cover({ lessons });
    expect(row.evidence).toMatchObject({ lessons: 2, lessonsHeld: 1 });
    expect(row.gaps.map(({ kind }) => kind).slice(0, 2)).toEqual(['no-clip', 'lesson-missing']);
    const held = lessons.map((one) => ({ ...one, held: true }));
    expect(kinds({ lessons: held })).not.toContain('lesson-missing');
  });
});
