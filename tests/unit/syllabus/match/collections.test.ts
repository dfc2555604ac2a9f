import { readFileSync, statSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { partOf } from '#tests/tools/match-data/collection-file.ts';
import { bm25, miniSearch } from '#tests/bench/match/baselines.ts';
import { draw, readCollection } from '#tests/bench/match/collection.ts';
import { Random } from '#tests/bench/random.ts';

describe.each(['foldoc', 'webster'])('the labelled collection %s', (name) => {
  const path = `tests/data/match/${name}.tsv`;
  const collection = readCollection(name);

  it('keeps to its split by the word that is defined', () => {
    const rows = readFileSync(path, 'utf8')
      .trimEnd()
      .split('\n')
      .map((line) => line.split('\t'));
    const texts = rows.filter(([kind]) => kind !== 'topic');
    expect(texts.map(([part]) => part)).toEqual(texts.map(([, , head]) => partOf(head!)));
    expect(statSync(path).size).toBeLessThan(1_500_000);
  });

  it('has known topics only, and enough test texts of each to tag five and ask for others', () => {
    const { topics, train, test } = collection;
    for (const text of [...train, ...test]) {
      expect(text.topics.length).toBeGreaterThan(0);
      expect(text.topics.every((topic) => topic in topics)).toBe(true);
    }
    topics.forEach((_, topic) => {
      expect(test.filter((t) => t.topics.includes(topic)).length).toBeGreaterThanOrEqual(12);
    });
  });

  it('is never asked for a text that was tagged', () => {
    const { tagged, queries } = draw(collection.test, collection.topics.length, 5, new Random(1));
    const known = new Set(tagged.map(({ text }) => text));
    expect(known.size).toBeGreaterThan(4 * collection.topics.length);
    expect(queries.filter(({ text }) => known.has(text))).toEqual([]);
  });
});

describe('the baselines', () => {
  const topics = [
    { title: 'Tides', text: 'The tidal range follows the moon.' },
    { title: 'Waves', text: 'Waves carry energy, waves break.' },
  ];

  it('rank by stems, and learn from tagged texts in either form', () => {
    const tagged = [{ topic: 1, text: 'Foam and spray' }];
    for (const as of ['appended', 'documents'] as const) {
      expect(bm25(topics, tagged, as)('a wave breaking')).toEqual([1]);
      expect(bm25(topics, tagged, as)('foaming')).toEqual([1]);
      expect(miniSearch(topics, tagged, as)('spray over the moon')[0]).toBeDefined();
      expect(miniSearch(topics, tagged, as)('foam')).toEqual([1]);
    }
    expect(bm25(topics, [], 'appended')('foam')).toEqual([]);
  });
});
