import type { Clip } from '#lib/model/clip.ts';
import type { Line, Question } from '#lib/model/item.ts';

/**
 * What can be found, in the order in which it is shown. Another kind is a name here, a function like those below, its
 * store in lib/store/deck-search.ts, and its words and link in lib/ui/search/kinds.ts.
 */
export const SEARCH_KINDS = ['clip', 'line', 'question'] as const;
export type SearchKind = (typeof SEARCH_KINDS)[number];

/** A text of a document. A word in a text of weight 2 counts as one that stands twice in a text of weight 1. */
export interface SearchField {
  text: string;
  weight: 1 | 2;
}

/** One thing that can be found, whatever its kind. */
export interface SearchDocument {
  kind: SearchKind;
  id: string;
  courseId: string;
  topicIds: readonly string[];
  /** Of a clip; null for what is written. */
  sourceId: string | null;
  /** The clip that it was written from: it has that clip's source and is as unclear. Null for clips themselves. */
  clipId: string | null;
  unclear: boolean;
  /** Epoch milliseconds. */
  createdAt: number;
  /** The first is shown with every result, the others where they hold what was looked for. */
  fields: readonly SearchField[];
}

export const documentOfClip = (clip: Clip): SearchDocument => ({
  kind: 'clip',
  id: clip.id,
  courseId: clip.courseId,
  topicIds: clip.topicIds,
  sourceId: clip.sourceId,
  clipId: null,
  unclear: clip.unclear,
  createdAt: clip.createdAt,
  fields: [
    { text: clip.text, weight: 1 },
    { text: clip.ownWords, weight: 2 },
  ],
});

export const documentOfLine = (line: Line): SearchDocument => ({
  ...written(line),
  kind: 'line',
  fields: [
    { text: line.lead, weight: 2 },
    { text: line.rest, weight: 1 },
  ],
});

export const documentOfQuestion = (question: Question): SearchDocument => ({
  ...written(question),
  kind: 'question',
  fields: [
    { text: question.prompt, weight: 2 },
    { text: question.answer, weight: 1 },
  ],
});

const written = ({ id, courseId, topicId, clipId, createdAt }: Line | Question) => ({
  id,
  courseId,
  topicIds: [topicId],
  sourceId: null,
  clipId,
  unclear: false,
  createdAt,
});
