import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Topic } from '#lib/model/topic.ts';
import { type TopicNode, activeTopics, byIdOf, examShares, pathOf, topicTree } from '#lib/syllabus/tree.ts';
import { aTopic } from '#tests/unit/builders.ts';

/** Topics named by letters; [id, parent, further fields]. */
const topicsOf = (...all: [string, string | null, Partial<Topic>?][]): Topic[] =>
  all.map(([id, parentId, over], order) => aTopic({ id, parentId, order, title: id, ...over }));

const shape = (nodes: TopicNode[]): string =>
  nodes
    .map(({ topic, children }) => topic.id + (children.length > 0 ? `(${shape(children)})` : ''))
    .join(' ');

const OCEAN = topicsOf(['a', null], ['b', 'a'], ['c', 'a'], ['d', 'c'], ['e', null]);

describe('topicTree', () => {
  it('nests topics, siblings in reading order', () => {
    expect(shape(topicTree(OCEAN))).toBe('a(b c(d)) e');
    expect(shape(topicTree(OCEAN.toReversed()))).toBe('a(b c(d)) e');
  });

  it('puts topics without their parent, or in a circle, at the top', () => {
    expect(shape(topicTree(topicsOf(['a', 'gone'], ['b', 'a'])))).toBe('a(b)');
    expect(shape(topicTree(topicsOf(['a', 'b'], ['b', 'a'], ['c', 'b'])))).toBe('a b(c)');
    expect(shape(topicTree(topicsOf(['a', 'a'])))).toBe('a');
  });
});

describe('pathOf', () => {
  it('leads from the top to the topic', () => {
    const ids = (topic: Topic | undefined) => topic && pathOf(topic, byIdOf(OCEAN)).map(({ id }) => id);
    expect(ids(OCEAN[3])).toEqual(['a', 'c', 'd']);
    expect(ids(OCEAN[0])).toEqual(['a']);
  });

  it('ends in a circle', () => {
    const circle = topicsOf(['a', 'b'], ['b', 'a']);
    expect(circle.map((t) => pathOf(t, byIdOf(circle)).map(({ id }) => id))).toEqual([
      ['b', 'a'],
      ['a', 'b'],
    ]);
  });
});

describe('activeTopics', () => {
  it('leaves out what is off and all below it, in reading order', () => {
    const topics = topicsOf(
      ['a', null, { off: true }],
      ['b', 'a'],
      ['c', null],
      ['d', 'c', { off: true }],
      ['e', 'c'],
    );
    expect(activeTopics(topics.toReversed()).map(({ id }) => id)).toEqual(['c', 'e']);
  });
});

describe('examShares', () => {
  const sharesOf = (...all: Parameters<typeof topicsOf>) => Object.fromEntries(examShares(topicsOf(...all)));

  it('divides evenly where nothing is given', () => {
    expect(sharesOf(['a', null], ['b', 'a'], ['c', 'a'], ['d', null])).toEqual({ b: 0.25, c: 0.25, d: 0.5 });
  });

  it('divides by given shares, in whatever unit', () => {
    expect(sharesOf(['a', null, { share: 30 }], ['b', null, { share: 10 }])).toEqual({ a: 0.75, b: 0.25 });
  });

  it('lets a topic without a share weigh as much as the mean of its siblings', () => {
    expect(sharesOf(['a', null, { share: 1 }], ['b', null, { share: 3 }], ['c', null], ['d', null])).toEqual({
      a: 0.125,
      b: 0.375,
      c: 0.25,
      d: 0.25,
    });
  });

  it('divides evenly where the given shares come to nothing', () => {
    expect(sharesOf(['a', null, { share: 0 }], ['b', null, { share: 0 }])).toEqual({ a: 0.5, b: 0.5 });
    expect(sharesOf(['a', null, { share: 0 }], ['b', null])).toEqual({ a: 0, b: 1 });
  });

  it('gives the part of topics that are off to the others', () => {
    expect(sharesOf(['a', null, { off: true }], ['b', null], ['c', 'b', { off: true }])).toEqual({ b: 1 });
  });

  it('adds up to 1 over the leaves, whatever the tree', () => {
    const anyTopic = fc.record({
      parent: fc.integer({ min: -1, max: 24 }),
      share: fc.option(fc.double({ min: 0, max: 1e6, noNaN: true })),
      off: fc.boolean(),
    });
    fc.assert(
      fc.property(fc.array(anyTopic, { maxLength: 20 }), (all) => {
        const topics = topicsOf(
          ...all.map(({ parent, share, off }, i): [string, string | null, Partial<Topic>] => [
            String(i),
            parent < 0 ? null : String(parent),
            { share, off },
          ]),
        );
        const shares = [...examShares(topics).values()];
        const sum = shares.reduce((total, share) => total + share, 0);
        expect(sum).toBeCloseTo(activeTopics(topics).length > 0 ? 1 : 0, 9);
        expect(shares.every((share) => share >= 0)).toBe(true);
      }),
    );
  });
});
