import type { Statement, Topic } from '#lib/model/topic.ts';
import { withoutCommand } from '../command-words.ts';
import { activeTopics, byIdOf, pathOf } from '../tree.ts';
import { Field } from './field.ts';
import { Stems } from './terms.ts';
import { FIELD_WEIGHTS, PAIR_WEIGHT, TAGGED_READ } from './weights.ts';
import type { FieldName } from './weights.ts';

/** What the index is made of. */
export interface TopicIndexInput {
  topics: readonly Topic[];
  statements: readonly Statement[];
  /** Passages that the student has tagged already, as plain text; one entry for each passage and topic. */
  tagged: readonly { topicId: string; text: string }[];
}

/** Where a word or pair of words stands. */
export interface Posting {
  /** How telling it is: high where few topics have it. */
  idf: number;
  /** Its weight in each topic that has it, by the topic's place in `topicIds`. */
  weights: Map<number, number>;
}

/** The syllabus made ready for suggestTopics. Opaque to callers, and not kept: it is built in no time. */
export interface TopicIndex {
  topicIds: readonly string[];
  hasChildren: readonly boolean[];
  postings: ReadonlyMap<string, Posting>;
  /** What a word would tell that no topic has. */
  unseenIdf: number;
  stems: Stems;
}

/**
 * Indexes the topics that count (see activeTopics) by the words of their titles, statements, ancestors' titles and
 * tagged passages. What is tagged to any other topic is passed over.
 */
export function buildTopicIndex(input: TopicIndexInput): TopicIndex {
  const topics = activeTopics(input.topics);
  const stems = new Stems();
  const parents = new Set(topics.map((t) => t.parentId));
  const postings = new Map<string, Posting>();
  for (const [name, field] of fieldsOf(topics, input, stems)) addField(postings, field, FIELD_WEIGHTS[name]);
  for (const [term, posting] of postings) posting.idf = idfOf(term, posting.weights.size, topics.length);
  return {
    topicIds: topics.map((t) => t.id),
    hasChildren: topics.map((t) => parents.has(t.id)),
    postings,
    unseenIdf: idfOf('', 0, topics.length),
    stems,
  };
}

function fieldsOf(topics: Topic[], input: TopicIndexInput, stems: Stems): Map<FieldName, Field> {
  const fields = new Map<FieldName, Field>();
  const places = new Map(topics.map((t, place) => [t.id, place]));
  const fill = (name: FieldName, texts: Iterable<{ topicId: string; text: string }>): void => {
    const field = new Field(topics.length, stems, { pairs: name !== 'tagged' });
    for (const { topicId, text } of texts) field.add(places.get(topicId), text);
    fields.set(name, field);
  };
  fill(
    'title',
    topics.map((t) => ({ topicId: t.id, text: t.title })),
  );
  fill(
    'statements',
    input.statements.map(({ topicId, text }) => ({ topicId, text: withoutCommand(text) })),
  );
  fill('ancestors', ancestorTitles(topics));
  fill(
    'tagged',
    input.tagged.map(({ topicId, text }) => ({ topicId, text: text.slice(0, TAGGED_READ) })),
  );
  return fields;
}

function ancestorTitles(topics: Topic[]): { topicId: string; text: string }[] {
  const byId = byIdOf(topics);
  return topics.flatMap((t) =>
    pathOf(t, byId)
      .slice(0, -1)
      .map((above) => ({ topicId: t.id, text: above.title })),
  );
}

function addField(postings: Map<string, Posting>, field: Field, weight: number): void {
  field.forEach((term, place, count) => {
    let posting = postings.get(term);
    if (!posting) postings.set(term, (posting = { idf: 0, weights: new Map() }));
    posting.weights.set(place, (posting.weights.get(place) ?? 0) + weight * count);
  });
}

/** BM25's inverse document frequency, in the form that never falls below zero. */
function idfOf(term: string, having: number, all: number): number {
  const idf = Math.log(1 + (all - having + 0.5) / (having + 0.5));
  return term.includes(' ') ? idf * PAIR_WEIGHT : idf;
}
