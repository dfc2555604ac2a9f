import { expect, test } from 'vitest';
import type { Clip } from '#lib/model/clip.ts';
import { FRAGMENT_OF, Selector } from '#lib/model/selector.ts';
import type { Source } from '#lib/model/source.ts';
import { sectionsOf } from '#lib/exchange/out/sections.ts';
import { webAnnotations } from '#lib/exchange/out/web-annotations.ts';
import { CollectionModel, PREFIXES, TERMS } from '#tests/data/web-annotation.ts';
import { MORNING, aClip, aCourse, aTopic } from '../../builders.ts';
import { aSource } from '../../ui/a-course.ts';

const topic = aTopic({ code: '1.1', title: 'Deep water' });
const pictureId = crypto.randomUUID();

function collectionOf(clips: Clip[], sources: Source[]): unknown {
  const rows = { course: aCourse(), topics: [topic], lines: [], questions: [], clips, sources };
  const made = webAnnotations({
    label: 'Foundation Oceanography',
    id: crypto.randomUUID(),
    sections: sectionsOf(rows, { notes: false, questions: false, clips: true }),
    unclear: 'unclear',
    pictures: new Map([
      [pictureId, { address: 'data:image/webp;base64,AAAA', alt: 'x', width: 1, height: 1 }],
    ]),
    savedAt: MORNING,
    timeOf: (at) => new Date(at).toISOString(),
  });
  return JSON.parse(JSON.stringify(made));
}

/** Every key of an object and of all within it. */
const keysOf = (value: unknown): string[] =>
  typeof value !== 'object' || value === null
    ? []
    : Array.isArray(value)
      ? value.flatMap(keysOf)
      : Object.entries(value).flatMap(([key, part]) => [key, ...keysOf(part)]);

const xpath = {
  type: 'XPathSelector' as const,
  value: '/html/body/p[1]',
  refinedBy: { type: 'TextPositionSelector' as const, start: 0, end: 0 },
};
const SELECTORS: Selector[] = [
  { type: 'TextQuoteSelector', exact: 'Long waves', prefix: 'x', suffix: 'y' },
  { type: 'TextPositionSelector', start: 4, end: 14 },
  { type: 'RangeSelector', startSelector: xpath, endSelector: xpath },
];
const page = aSource({ licence: 'http://127.0.0.1/licence', author: 'A. Nemo' });
const video = aSource({ kind: 'video', url: 'http://127.0.0.1/film' });
const pdf = aSource({ kind: 'pdf', url: `ni:///sha-256;${'A'.repeat(43)}` });
const own = aSource({ kind: 'own', url: `urn:uuid:${crypto.randomUUID()}`, title: '', site: '' });
const clips = [
  aClip({
    topicIds: [topic.id],
    sourceId: page.id,
    selectors: SELECTORS,
    ownWords: 'They are faster.',
    unclear: true,
  }),
  aClip({
    sourceId: video.id,
    selectors: [{ type: 'FragmentSelector', conformsTo: FRAGMENT_OF.media, value: 't=12.4,20' }],
  }),
  aClip({
    sourceId: pdf.id,
    selectors: [{ type: 'FragmentSelector', conformsTo: FRAGMENT_OF.pdf, value: 'page=3' }],
  }),
  aClip({
    sourceId: own.id,
    selectors: [],
    pictureIds: [pictureId, crypto.randomUUID()],
    text: '',
    html: '',
  }),
  aClip({ selectors: [] }),
];

test('clips of every kind of source are a collection as the model asks', () => {
  const collection = collectionOf(clips, [page, video, pdf, own]);
  expect(CollectionModel.safeParse(collection).error).toBeUndefined();
  const read = CollectionModel.parse(collection);
  expect(read.total).toBe(5);
  expect(read.first.items).toHaveLength(5);
  expect(read.last).toBe(read.first.id);
  expect(read.first.partOf).toBe(read.id);
  expect(new Set(read.first.items.map(({ id }) => id)).size).toBe(5);
});

test('every key is a term of the context', () => {
  const keys = new Set(keysOf(collectionOf(clips, [page, video, pdf, own])));
  const unknown = [...keys].filter((key) => !TERMS.has(key) && !PREFIXES.includes(key.split(':')[0]!));
  expect(unknown).toEqual([]);
  // A key that the context lacks would be found.
  expect(TERMS.has('licence')).toBe(false);
});

test('an annotation says where the passage is, what the student made of it, and on what terms', () => {
  const { items } = CollectionModel.loose().parse(collectionOf(clips, [page, video, pdf, own])).first;
  const [first, second, , fourth, fifth] = items;
  expect(first).toMatchObject({
    motivation: 'describing',
    created: '2026-03-02T08:00:00.000Z',
    body: [
      { value: 'They are faster.', purpose: 'describing' },
      { value: '<p>Long waves outrun short ones.</p>', format: 'text/html' },
      { value: '1.1 Deep water', purpose: 'tagging' },
      { value: 'unclear', purpose: 'tagging' },
    ],
    target: {
      type: 'SpecificResource',
      source: { id: page.url, rights: page.licence, creator: { name: 'A. Nemo' } },
      selector: SELECTORS,
    },
  });
  expect(second).toMatchObject({ motivation: 'highlighting', target: { source: { type: 'Video' } } });
  expect(fourth).toMatchObject({
    body: [{ id: 'data:image/webp;base64,AAAA', type: 'Image', format: 'image/webp' }],
    target: { id: own.url },
  });
  expect(fifth!.target).toEqual({ id: `urn:uuid:${clips[4]!.sourceId}` });
});

test('without a clip there is a collection of none, and no page', () => {
  const none = collectionOf([], []);
  expect(none).toMatchObject({ type: 'AnnotationCollection', total: 0 });
  expect(none).not.toHaveProperty('first');
});
