import fc from 'fast-check';
import MiniSearch from 'minisearch';
import { describe, expect, test } from 'vitest';
import { documentOfClip, documentOfLine, documentOfQuestion } from '#lib/notes/search/document.ts';
import { type Filter, NO_FILTER } from '#lib/notes/search/filter.ts';
import { SearchIndex } from '#lib/notes/search/search-index.ts';
import { aClip, aLine, aQuestion, MORNING, newId } from '../../builders.ts';
import { aDocument, aText } from './documents.ts';

function indexOf(texts: Record<string, string>) {
  const index = new SearchIndex();
  const names = new Map<string, string>();
  for (const [name, text] of Object.entries(texts)) {
    const document = aDocument([text]);
    names.set(document.id, name);
    index.put(document);
  }
  return (asked: string, filter: Filter = NO_FILTER) => {
    const { kinds, ...rest } = index.search(asked, filter, 100);
    return {
      ...rest,
      names: kinds.flatMap(({ found }) => found.map(({ document }) => names.get(document.id))),
    };
  };
}

describe('words', () => {
  test('exact forms rank above stems, stems above misspellings', () => {
    // The longer the text, the less a word in it counts: rank by form goes before that.
    const much = 'and water and water and more water '.repeat(30);
    const search = indexOf({
      misspelt: 'disperssed',
      long: `${much} dispersing`,
      exact: `${much} ${much} dispersed`,
      short: 'dispersion',
      other: 'diapers',
    });
    expect(search('dispersed ').names).toEqual(['exact', 'short', 'long', 'misspelt']);
  });

  test('the last word counts by its beginning while it is being typed; the others do not', () => {
    const search = indexOf({ one: 'estuaries fill', two: 'estimates fill' });
    expect(search('estu').names).toEqual(['one']);
    expect(search('est').names).toHaveLength(2);
    expect(search('est fill').isComplete).toBe(false);
    expect(search('fill est').isComplete).toBe(true);
  });

  test('misspellings: one edit in words of four to seven letters, two in longer ones; short words have to be right', () => {
    const search = indexOf({ wave: 'wave', salinity: 'salinity', ebb: 'ebb', f: '24.84' });
    expect(search('wvae ').names).toEqual(['wave']);
    expect(search('wavve ').names).toEqual(['wave']);
    expect(search('vavve ').names).toEqual([]);
    expect(search('salinnitty ').names).toEqual(['salinity']);
    expect(search('eb ').names).toEqual([]);
    expect(search('ebd ').names).toEqual([]);
    expect(search('24.85 ').names).toEqual([]);
  });

  test('a short word that the deck knows is not taken for a misspelling of another', () => {
    const search = indexOf({ wave: 'wave', have: 'have' });
    expect(search('wave ').names).toEqual(['wave']);
  });

  test('unless it is known only where nobody looks', () => {
    const index = new SearchIndex();
    index.put(aDocument(['the wvae'], { sourceId: 'a' }));
    index.put(aDocument(['the wave'], { sourceId: 'b' }));
    const { count, kinds } = index.search('wvae ', { ...NO_FILTER, sourceId: 'b' }, 5);
    expect(count).toBe(1);
    expect(kinds[0]!.found[0]!.document.sourceId).toBe('b');
  });

  test('several: what holds all; where nothing does, what holds most comes first', () => {
    const search = indexOf({ all: 'spring and neap tides', two: 'spring tides', one: 'tides' });
    expect(search('spring neap tides')).toMatchObject({ isComplete: true, names: ['all'] });
    expect(search('spring tides seiche')).toMatchObject({ isComplete: false, count: 3 });
    expect(search('spring tides seiche').names.at(-1)).toBe('one');
  });

  test('little words need not be there, but are found where nothing else is looked for', () => {
    const search = indexOf({ tide: 'tide tables', the: 'the other of them' });
    expect(search('what is the tide').names).toEqual(['tide']);
    expect(search('the of ').names).toEqual(['the']);
  });

  test('in quotes: together, in that order and form; not across the fields of a thing', () => {
    const index = new SearchIndex();
    index.put(aDocument(['neap and spring tides']));
    index.put(aDocument(['tides in spring', 'tide spring', 'tides']));
    const count = (asked: string) => index.search(asked, NO_FILTER, 5).count;
    expect(count('"spring tides"')).toBe(1);
    expect(count('“spring tides”')).toBe(1);
    expect(count('"spring tide"')).toBe(0);
    expect(count('"tides in spring" tides')).toBe(1);
    // Not yet closed: words like others.
    expect(count('"spring ti')).toBe(2);
  });

  test('hyphens: together and apart', () => {
    const search = indexOf({
      hyphen: 'deep-water',
      one: 'deepwater',
      apart: 'water that is deep',
      no: 'shallow',
    });
    expect(search('deepwater ').names.sort()).toEqual(['hyphen', 'one']);
    expect(search('deep-water ').names.sort()).toEqual(['apart', 'hyphen', 'one']);
  });

  test('formulas: by their words, symbols and commands', () => {
    const search = indexOf({
      long: String.raw`Speed \(c = \sqrt{g h}\)`,
      deep: String.raw`\[\omega^2 = g k\]`,
    });
    expect(search('sqrt').names).toEqual(['long']);
    expect(search('√').names).toEqual(['long']);
    for (const omega of ['ω', 'omega', String.raw`\omega`]) expect(search(omega).names).toEqual(['deep']);
    expect(search(String.raw`\(g k\)`).names).toEqual(['deep']);
  });
});

describe('bad input', () => {
  const search = indexOf({ one: 'tides 🌊', two: 'مد وجزر' });
  test.each([
    ['nothing', ''],
    ['spaces', '   '],
    ['punctuation', '?!… — ()[]{}"\'\\ " " ""'],
    ['a lone surrogate', '\ud83c'],
  ])('%s is no search', (_what, asked) => {
    expect(search(asked)).toMatchObject({ hasWords: false, count: 0 });
  });

  test('ten thousand characters, emoji, and text from right to left', () => {
    expect(search('tides '.repeat(2000))).toMatchObject({ count: 1, isComplete: true });
    expect(search('x'.repeat(10_000)).count).toBe(0);
    expect(search('🌊').names).toEqual(['one']);
    expect(search('مَدّ').names).toEqual(['two']);
    expect(search('__proto__ constructor toString').count).toBe(0);
  });

  test('many different words: none counts for nothing', () => {
    const words = Array.from({ length: 500 }, (_, i) => `w${i}`);
    expect(indexOf({ all: words.join(' ') })(words.join(' '))).toMatchObject({ count: 1, isComplete: true });
  });
});

describe('what is looked among', () => {
  const topic = newId();
  const index = new SearchIndex();
  const clip = aClip({ topicIds: [topic], unclear: true, text: 'tides', createdAt: MORNING });
  const line = aLine({ clipId: clip.id, lead: 'tides', createdAt: MORNING + 1 });
  const question = aQuestion({ prompt: 'tides?', topicId: topic, createdAt: MORNING + 2 });
  index.put(documentOfLine(line));
  index.put(documentOfClip(clip));
  index.put(documentOfQuestion(question));
  const ids = (filter: Partial<Filter>) =>
    index
      .search('tides', { ...NO_FILTER, ...filter }, 5)
      .kinds.flatMap(({ found }) => found.map(({ document }) => document.id));

  test.each<[string, Partial<Filter>, string[]]>([
    ['everything', {}, [clip.id, line.id, question.id]],
    ['topics', { topicIds: new Set([topic]) }, [clip.id, question.id]],
    ['a source: clips and what was written from them', { sourceId: clip.sourceId }, [clip.id, line.id]],
    ['unclear clips and what was written from them', { isUnclear: true }, [clip.id, line.id]],
    ['kept since', { since: MORNING + 1 }, [line.id, question.id]],
    ['kept before', { before: MORNING + 1 }, [clip.id]],
    ['all at once', { since: MORNING, before: MORNING + 1, isUnclear: true, topicIds: new Set() }, []],
  ])('%s', (_what, filter, found) => {
    expect(ids(filter)).toEqual(found);
  });
});

test('kinds are counted whole and given up to a limit, the newest of equals first', () => {
  const index = new SearchIndex();
  const clips = Array.from({ length: 9 }, (_, i) => aDocument(['tide'], { createdAt: MORNING + (i % 5) }));
  clips.forEach((one) => index.put(one));
  const [kind] = index.search('tide', NO_FILTER, 3).kinds;
  expect(kind).toMatchObject({ kind: 'clip', count: 9 });
  expect(kind!.found.map(({ document }) => document.createdAt - MORNING)).toEqual([4, 3, 3]);
});

test('for words without other forms, the same is found with the same scores as by MiniSearch', () => {
  // Numbers have no other forms. Reference: MiniSearch 7 with its defaults, one field. It multiplies a sum of scores by
  // how many words were found, which for all of them changes no order.
  const aNumber = fc.integer({ min: 0, max: 60 }).map((n) => String(1000 + n));
  fc.assert(
    fc.property(
      fc.array(fc.array(aNumber, { minLength: 1, maxLength: 30 }), { minLength: 1, maxLength: 40 }),
      fc.uniqueArray(aNumber, { minLength: 1, maxLength: 4 }),
      (texts, asked) => {
        const index = new SearchIndex();
        const reference = new MiniSearch({ fields: ['text'] });
        for (const words of texts) {
          const document = aDocument([words.join(' ')]);
          index.put(document);
          reference.add({ id: document.id, text: words.join(' ') });
        }
        const expected = reference.search(asked.join(' '), { combineWith: 'AND' });
        const { kinds, isComplete, count } = index.search(`${asked.join(' ')} `, NO_FILTER, 1000);
        expect(isComplete ? count : 0).toBe(expected.length);
        const scores = new Map(
          kinds.flatMap(({ found }) => found.map((f) => [f.document.id, f.rank % 4096])),
        );
        if (isComplete)
          for (const { id, score } of expected)
            expect(scores.get(id as string)).toBeCloseTo(score / asked.length, 6);
      },
    ),
    { numRuns: 200 },
  );
});

test('after any changes it finds the same, in the same order, as an index made anew', () => {
  const aChange = fc.record({
    id: fc.integer({ min: 0, max: 8 }),
    texts: fc.option(fc.array(aText, { maxLength: 3 })),
  });
  const asked = fc.constantFrom(
    'tide',
    'tides wave',
    'spri',
    'wvae ',
    '"spring tide"',
    'the',
    'ω',
    'deepwater',
  );
  fc.assert(
    fc.property(fc.array(aChange, { maxLength: 30 }), asked, (changes, text) => {
      const index = new SearchIndex();
      const kept = new Map<string, ReturnType<typeof aDocument>>();
      for (const { id, texts } of changes) {
        const name = `id-${id}`;
        if (texts === null) {
          index.remove(name);
          kept.delete(name);
        } else {
          const document = aDocument(texts, { id: name, createdAt: id % 3 });
          index.put(document);
          kept.set(name, document);
        }
      }
      const anew = new SearchIndex();
      for (const document of kept.values()) anew.put(document);
      expect(index.size).toBe(anew.size);
      const found = index.search(text, NO_FILTER, 100);
      const foundAnew = anew.search(text, NO_FILTER, 100);
      expect(found.kinds).toEqual(foundAnew.kinds);
      expect(new Map([...found.marked].sort())).toEqual(new Map([...foundAnew.marked].sort()));
    }),
    { numRuns: 300 },
  );
});
