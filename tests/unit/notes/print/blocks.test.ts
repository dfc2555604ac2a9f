import { describe, expect, test } from 'vitest';
import { gapAbove, keepsNext, noteBlocks, questionBlocks } from '#lib/notes/print/blocks.ts';
import { aLine, aQuestion, aTopic, newId } from '#tests/unit/builders.ts';

const waves = aTopic({ order: 0, code: '1', title: 'Waves' });
const deep = aTopic({ order: 1, code: '1.1', title: 'Deep water', parentId: waves.id });
const shallow = aTopic({ order: 2, code: '1.2', title: 'Shallow water', parentId: waves.id });
const tides = aTopic({ order: 3, code: '2', title: 'Tides' });
const topics = [tides, shallow, waves, deep];

const inTopic = (topic: { id: string }, over: Parameters<typeof aLine>[0] = {}) =>
  aLine({ topicId: topic.id, ...over });
const told = (blocks: ReturnType<typeof noteBlocks>) =>
  blocks.map((block) => {
    if (block.kind === 'topic') return `${block.level} ${block.code} ${block.title}`;
    return block.kind === 'line' ? `${block.lead}: ${block.rest}` : block.kind;
  });

describe('the printed notes', () => {
  test('topics in reading order, each heading once and only above something', () => {
    const lines = [
      inTopic(shallow, { lead: 'second', rest: 'b', order: 1 }),
      inTopic(shallow, { lead: 'first', rest: 'a', order: 0 }),
      inTopic(deep, { lead: 'deep', rest: 'c' }),
    ];
    expect(told(noteBlocks(topics, lines))).toEqual([
      '0 1 Waves',
      '1 1.1 Deep water',
      'deep: c',
      '1 1.2 Shallow water',
      'first: a',
      'second: b',
    ]);
  });

  test('a line on the topic itself stands before the topics below it', () => {
    const lines = [inTopic(deep, { lead: 'deep' }), inTopic(waves, { lead: 'waves', order: 7 })];
    expect(told(noteBlocks(topics, lines)).map((one) => one.split(':')[0])).toEqual([
      '0 1 Waves',
      'waves',
      '1 1.1 Deep water',
      'deep',
    ]);
  });

  test('what is left out, just begun, off, dropped or of no topic is not printed', () => {
    const lines = [
      inTopic(waves, { leftOut: 'known' }),
      inTopic(waves, { lead: '', rest: '' }),
      inTopic(shallow),
      inTopic(tides),
      aLine(),
    ];
    const changed = [waves, deep, { ...shallow, off: true, dropped: true }, { ...tides, off: true }];
    expect(noteBlocks(changed, lines)).toEqual([]);
  });

  test('diagrams stand below their line, those that are gone not at all', () => {
    const [there, gone] = [newId(), newId()];
    const lines = [
      inTopic(waves, { lead: 'a', pictureIds: [there, gone, there] }),
      inTopic(waves, { lead: '', rest: '', order: 1, pictureIds: [there] }),
    ];
    const pictures = new Map([[there, { width: 300, height: 200, alt: 'An orbit' }]]);
    const blocks = noteBlocks(topics, lines, pictures);
    expect(blocks.map(({ kind }) => kind)).toEqual(['topic', 'line', 'picture', 'picture', 'picture']);
    expect(new Set(blocks.map(({ id }) => id)).size).toBe(blocks.length);
    expect(blocks[2]).toMatchObject({ pictureId: there, width: 300, height: 200, alt: 'An orbit' });
  });

  test('headings, lines above deeper ones and lines with a diagram keep what follows', () => {
    const lines = [
      inTopic(waves, { lead: 'Kinds', rest: '', order: 0 }),
      inTopic(waves, { lead: 'long', rest: 'a', order: 1, depth: 1 }),
      inTopic(waves, { lead: 'Mind the units', rest: '', order: 2, depth: 1 }),
      inTopic(deep, { lead: 'A remark', rest: '', order: 0 }),
      inTopic(shallow, { lead: 'deeper elsewhere', rest: 'b', depth: 2 }),
    ];
    const blocks = noteBlocks(topics, lines);
    expect(blocks.map((block, i) => keepsNext(block, blocks[i + 1]))).toEqual([
      true,
      true,
      false,
      false,
      true,
      false,
      true,
      false,
    ]);
    expect(blocks.map((block, i) => gapAbove(block, blocks[i - 1])).every((gap) => gap >= 0)).toBe(true);
    // A heading right below a heading stands close to it.
    expect(gapAbove(blocks[4]!, blocks[0])).toBeLessThan(gapAbove(blocks[4]!, blocks[3]));
  });
});

test('questions are numbered through, by topics in reading order', () => {
  const questions = [
    aQuestion({ topicId: tides.id, prompt: 'third' }),
    aQuestion({ topicId: deep.id, prompt: 'first' }),
    aQuestion({ topicId: shallow.id, prompt: 'second', marks: 4 }),
    aQuestion({ prompt: 'of no topic' }),
  ];
  const blocks = questionBlocks(topics, questions);
  expect(blocks.map(({ number, prompt }) => [number, prompt])).toEqual([
    [1, 'first'],
    [2, 'second'],
    [3, 'third'],
  ]);
  expect(blocks[1]).toMatchObject({ marks: 4, topic: { code: '1.2', title: 'Shallow water' } });
});
