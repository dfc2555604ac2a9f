import { describe, expect, it } from 'vitest';
import { type CoverageInput, coverageOf } from '#lib/syllabus/coverage.ts';
import { aClip, aLine, aQuestion, aTopic, newId } from '#tests/unit/builders.ts';

const topic = aTopic({ order: 1 });
const inTopic = { topicId: topic.id };
const clip = (over: Parameters<typeof aClip>[0] = {}) => aClip({ topicIds: [topic.id], ...over });
const statement = (topicId: string) => ({
  id: newId(),
  courseId: topic.courseId,
  topicId,
  order: 0,
  code: '',
  text: 'state it',
  group: '',
  off: false,
  createdAt: 0,
  changedAt: 0,
});

const cover = (over: Partial<CoverageInput> = {}) =>
  coverageOf({
    topics: [topic],
    statements: [],
    clips: [],
    questions: [],
    lines: [],
    lessons: [],
    secured: new Set(),
    attempted: new Set(),
    ...over,
  });
const one = (over: Partial<CoverageInput> = {}) => {
  const [row] = cover(over).topics;
  if (!row) throw new Error('no topic');
  return row;
};
const gaps = (over: Partial<CoverageInput> = {}) =>
  one(over).gaps.map(({ kind, action }) => `${kind}: ${action}`);

describe('gaps', () => {
  it('of a topic with nothing', () => {
    expect(gaps()).toEqual([
      'no-clip: find-explanation',
      'no-question: write-question',
      'no-line: write-line',
    ]);
    expect(one()).toMatchObject({ missing: 1, atStake: 1, share: 1 });
  });

  it('close one by one', () => {
    const understood = clip({ ownWords: 'long ones win' });
    const question = aQuestion(inTopic);
    const line = aLine(inTopic);
    const items = { questions: [question], lines: [line] };
    const both = new Set([question.id, line.id]);
    const only = new Set([question.id]);
    const rest = ['no-question: write-question', 'no-line: write-line'];
    expect(gaps({ clips: [clip()] })).toEqual([
      'not-understood: write-own-words',
      'one-source: add-second-explanation',
      ...rest,
    ]);
    expect(gaps({ clips: [understood] })).toEqual(['one-source: add-second-explanation', ...rest]);
    expect(gaps({ clips: [understood, clip()] })).toEqual(rest);
    const clips = [understood, clip()];
    expect(gaps({ clips, ...items })).toEqual(['not-recalled: run-round']);
    expect(gaps({ clips, ...items, attempted: only })).toEqual(['not-secured: run-round']);
    expect(gaps({ clips, ...items, attempted: both, secured: only })).toEqual(['not-secured: run-round']);
    expect(gaps({ clips, ...items, attempted: both, secured: both })).toEqual([]);
  });

  it('of an unclear clip lead back to it, and ask for words only where there are none', () => {
    const two = { sourceId: newId() };
    const worded = clip({ ownWords: 'hm', unclear: true });
    expect(gaps({ clips: [worded, clip({ ...two, ownWords: 'yes' })] })[0]).toBe(
      'unclear: return-to-unclear',
    );
    expect(gaps({ clips: [worded] })).not.toContain('not-understood: write-own-words');
    expect(gaps({ clips: [clip({ unclear: true })] }).slice(0, 2)).toEqual([
      'not-understood: write-own-words',
      'unclear: return-to-unclear',
    ]);
  });

  it('tell two clips of one source from two sources', () => {
    const sourceId = newId();
    expect(one({ clips: [clip({ sourceId }), clip({ sourceId })] }).evidence).toMatchObject({
      clips: 2,
      sources: 1,
    });
  });
});

describe('evidence', () => {
  it('is counted once for each topic of a clip', () => {
    const other = aTopic({ order: 2 });
    const clips = [clip({ topicIds: [topic.id, other.id, topic.id], ownWords: 'yes' })];
    const { topics } = cover({ topics: [topic, other], clips });
    expect(topics.map(({ evidence }) => evidence)).toEqual([
      expect.objectContaining({ clips: 1, understood: 1 }),
      expect.objectContaining({ clips: 1, understood: 1 }),
    ]);
  });

  it('takes blanks for no words, and an unclear clip for one not understood', () => {
    const clips = [clip({ ownWords: ' \n' }), clip({ ownWords: 'hm', unclear: true })];
    expect(one({ clips }).evidence).toMatchObject({ clips: 2, understood: 0, unclear: 1 });
  });

  it('missing is the mean over its six parts', () => {
    const clips = [clip({ ownWords: 'yes' }), clip({ unclear: true })];
    const question = aQuestion(inTopic);
    const statements = [1, 2, 3, 4].map(() => statement(topic.id));
    const { missing } = one({ clips, questions: [question], statements, attempted: new Set([question.id]) });
    // clip 1, understood 1/2, sources 1, questions 1/4, lines 0, recalled 1
    expect(missing).toBeCloseTo(1 - (1 + 0.5 + 1 + 0.25 + 0 + 1) / 6, 12);
  });

  it('at stake is what is not secured, of the items or of the statements where these are more', () => {
    const questions = [aQuestion(inTopic), aQuestion(inTopic)];
    const secured = new Set(questions.slice(0, 1).map(({ id }) => id));
    expect(one({ questions, secured }).atStake).toBe(0.5);
    const statements = [1, 2, 3, 4].map(() => statement(topic.id));
    expect(one({ questions, secured, statements }).atStake).toBe(0.75);
    const switchedOff = statements.map((one, i) => ({ ...one, group: 'HL', off: i > 0 }));
    expect(one({ questions, secured, statements: switchedOff }).atStake).toBe(0.5);
  });
});

describe('coverage of a course', () => {
  it('lists the worst first: by stake times missing, then in reading order', () => {
    const [a, b, c, d] = [1, 1, 5, 5].map((share, order) => aTopic({ share, order }));
    if (!a || !b || !c || !d) throw new Error('no topics');
    const clips = [aClip({ topicIds: [c.id], ownWords: 'yes' })];
    const { topics, total } = cover({ topics: [d, b, c, a], clips });
    expect(topics.map(({ topicId }) => topicId)).toEqual([d.id, c.id, a.id, b.id]);
    expect(topics.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
    expect(total).toBe(4);
  });

  it('counts evidence on a parent for no leaf, and lists it', () => {
    const parent = aTopic({ order: 0 });
    const leaf = aTopic({ order: 1, parentId: parent.id });
    const { topics, above } = cover({ topics: [parent, leaf], clips: [aClip({ topicIds: [parent.id] })] });
    expect(topics).toMatchObject([{ topicId: leaf.id, evidence: { clips: 0 } }]);
    expect(above).toMatchObject([{ topicId: parent.id, evidence: { clips: 1 } }]);
  });

  it('leaves out what is off', () => {
    const off = aTopic({ off: true, order: 2 });
    const { topics, above, total } = cover({ topics: [topic, off], clips: [aClip({ topicIds: [off.id] })] });
    expect(topics.map(({ topicId }) => topicId)).toEqual([topic.id]);
    expect([above, total]).toEqual([[], 1]);
    expect(cover({ topics: [] })).toMatchObject({ topics: [], total: 0 });
  });

  it('counts the topics that have each kind of evidence', () => {
    const other = aTopic({ order: 2 });
    const question = aQuestion(inTopic);
    const line = aLine(inTopic);
    const both = new Set([question.id, line.id]);
    const clips = [clip({ ownWords: 'yes' }), clip(), aClip({ topicIds: [other.id], unclear: true })];
    const { covered } = cover({
      topics: [topic, other],
      clips,
      questions: [question],
      lines: [line],
      attempted: both,
      secured: new Set([line.id]),
    });
    expect(covered).toEqual({
      gathered: 2,
      understood: 1,
      secondSource: 1,
      questioned: 1,
      condensed: 1,
      recalled: 1,
      secured: 0,
      complete: 1,
    });
  });
});
