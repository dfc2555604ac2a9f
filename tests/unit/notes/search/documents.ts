import fc from 'fast-check';
import type { SearchDocument } from '#lib/notes/search/document.ts';
import { MORNING, newId } from '../../builders.ts';

/** A document with these texts. */
export const aDocument = (texts: string[], over: Partial<SearchDocument> = {}): SearchDocument => ({
  kind: 'clip',
  id: newId(),
  courseId: '00000000-0000-4000-8000-00000000c0de',
  topicIds: [],
  sourceId: null,
  clipId: null,
  unclear: false,
  createdAt: MORNING,
  fields: texts.map((text) => ({ text, weight: 1 })),
  ...over,
});

const WORDS = [
  'tide',
  'tides',
  'tidal',
  'wave',
  'waves',
  'the',
  'of',
  'spring',
  'neap',
  'Éstuaire',
  'deep-water',
];
const SIGNS = [
  'ω',
  String.raw`\(\sqrt{g h}\)`,
  '9.81 m',
  '🌊',
  'القمر',
  '潮汐',
  'e\u0301',
  '“',
  '\n',
  '  ',
  '𝜔t',
];

/** Texts as students and pages write them, with much that is odd. */
export const aText = fc.oneof(
  fc.array(fc.constantFrom(...WORDS, ...SIGNS), { maxLength: 60 }).map((parts) => parts.join(' ')),
  fc.array(fc.constantFrom(...WORDS, ...SIGNS), { maxLength: 20 }).map((parts) => parts.join('')),
  fc.string({ unit: 'binary', maxLength: 300 }),
);
