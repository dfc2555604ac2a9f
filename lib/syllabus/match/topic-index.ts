import type { Statement, Topic } from '#lib/model/topic.ts';
import { withoutCommand } from '../command-words.ts';
import { activeTopics, byIdOf, pathOf } from '../tree.ts';
import { Meanings } from './meanings.ts';
import { meaningOf, stemWeights } from './passage-terms.ts';
import { Postings } from './postings.ts';
import { Stems, pairOf, plainText, termsOf } from './terms.ts';
import { addTo, unit } from './vector.ts';
import { FIELD_WEIGHTS, TAGGED_READ, TAGGED_WEIGHT } from './weights.ts';
import { DIMENSIONS } from './word-vectors.ts';

/** A passage that the student put under a topic, as plain text. */
export interface TaggedPassage {
  topicId: string;
  text: string;
}

/** What the index is made of. */
export interface TopicIndexInput {
  topics: readonly Topic[];
  statements: readonly Statement[];
  /** Passages that the student has tagged already; one entry for each passage and topic. */
  tagged: readonly TaggedPassage[];
}

/** The syllabus made ready for suggestTopics. Not kept: it is built in no time, and learns from each tag at once. */
export class TopicIndex {
  readonly topicIds: readonly string[];
  readonly hasChildren: readonly boolean[];
  readonly postings: Postings;
  readonly meanings: Meanings;
  readonly stems = new Stems();
  readonly #places: ReadonlyMap<string, number>;

  /** See buildTopicIndex. */
  constructor({ topics: all, statements, tagged }: TopicIndexInput) {
    const topics = activeTopics(all);
    const parents = new Set(topics.map((t) => t.parentId));
    this.topicIds = topics.map((t) => t.id);
    this.hasChildren = topics.map((t) => parents.has(t.id));
    this.#places = new Map(topics.map((t, place) => [t.id, place]));
    this.postings = new Postings(topics.length);
    const taggedTo = Map.groupBy(tagged, ({ topicId }) => topicId);
    const own: Float32Array[] = [];
    const learnt: Float32Array[][] = [];
    for (const { topic, title, said, above } of readableTopics(topics, statements)) {
      const counts = new Map<string, number>();
      this.#count(counts, title, FIELD_WEIGHTS.title);
      this.#count(counts, said, FIELD_WEIGHTS.statements);
      for (const text of above) this.#count(counts, text, FIELD_WEIGHTS.ancestors);
      own.push(this.#meaningOfTopic([title, said]));
      learnt.push((taggedTo.get(topic.id) ?? []).map(({ text }) => this.#read(text, counts)));
      for (const [term, weight] of counts) this.postings.add(own.length - 1, term, weight);
    }
    this.meanings = new Meanings(own);
    learnt.forEach((meanings, place) => {
      for (const meaning of meanings) this.meanings.tag(place, meaning, 1);
    });
  }

  /** Learns from one more passage. One that is tagged to a topic that does not count is passed over. */
  tag(passage: TaggedPassage): void {
    this.#learn(passage, 1);
  }

  /** Forgets a passage that was learnt before. */
  untag(passage: TaggedPassage): void {
    this.#learn(passage, -1);
  }

  #learn({ topicId, text }: TaggedPassage, times: 1 | -1): void {
    const place = this.#places.get(topicId);
    if (place === undefined) return;
    const counts = new Map<string, number>();
    const meaning = this.#read(text, counts);
    for (const [stem, weight] of counts) this.postings.add(place, stem, times * weight);
    this.meanings.tag(place, meaning, times);
  }

  /** Adds the words of a tagged passage to a topic's counts, and gives what it means. */
  #read(text: string, counts: Map<string, number>): Float32Array {
    const weights = stemWeights(text.slice(0, TAGGED_READ), this.stems);
    for (const [stem, weight] of weights) counts.set(stem, (counts.get(stem) ?? 0) + TAGGED_WEIGHT * weight);
    return meaningOf(weights);
  }

  #meaningOfTopic(texts: readonly string[]): Float32Array {
    const sum = new Float32Array(DIMENSIONS);
    for (const text of texts) addTo(sum, meaningOf(stemWeights(text, this.stems)));
    return unit(sum);
  }

  #count(counts: Map<string, number>, text: string, weight: number): void {
    const terms = termsOf(plainText(text), this.stems);
    const add = (key: string) => counts.set(key, (counts.get(key) ?? 0) + weight);
    terms.forEach((term, i) => {
      add(term.stem);
      const pair = pairOf(terms[i - 1], term);
      if (pair) add(pair);
    });
  }
}

/** Each topic with the texts that say what it is about; a statement that is off says nothing. */
function readableTopics(topics: readonly Topic[], statements: readonly Statement[]) {
  const byId = byIdOf(topics);
  const counted = statements.filter(({ off }) => !off);
  const statementsOf = Map.groupBy(counted, ({ topicId }) => topicId);
  return topics.map((topic) => ({
    topic,
    title: topic.title,
    said: (statementsOf.get(topic.id) ?? []).map(({ text }) => withoutCommand(text)).join('\n'),
    above: pathOf(topic, byId)
      .slice(0, -1)
      .map(({ title }) => title),
  }));
}

/**
 * Indexes the topics that count (see activeTopics) by the words of their titles, statements, ancestors' titles and
 * tagged passages. What is tagged to any other topic is passed over.
 */
export const buildTopicIndex = (input: TopicIndexInput): TopicIndex => new TopicIndex(input);
