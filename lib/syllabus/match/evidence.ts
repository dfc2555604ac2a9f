import type { NearnessToCourse } from './meanings.ts';
import { passageTerms, vectorOf } from './passage-terms.ts';
import type { PassageInput, Terms } from './passage-terms.ts';
import { isPair } from './postings.ts';
import type { TopicIndex } from './topic-index.ts';
import { length, unit } from './vector.ts';
import { MEANING_WEIGHT, PARENT_STEP, RARITY_POWER } from './weights.ts';
import { wordVectors } from './word-vectors.ts';

/** What speaks for each topic, by its place in the index. */
export interface Evidence {
  terms: Terms;
  /** What shared words say: BM25 divided by the square root of what the passage could give (see `room`). */
  words: Float64Array;
  /** How near the passage is in meaning: a cosine. */
  nearness: Float64Array;
  course: NearnessToCourse;
  /** Both, as log odds up to a factor and what is common to all topics. */
  scores: Float64Array;
  /** The square root of the weight of all words of the passage: longer ones give more evidence, but not in step. */
  room: number;
  /** The length of the sum of the passage's word vectors: what each word's part in the meaning is divided by. */
  reach: number;
}

export function evidenceFor(passage: PassageInput, index: TopicIndex): Evidence {
  const terms = passageTerms(passage, index.stems);
  const { postings } = index;
  const words = new Float64Array(index.topicIds.length);
  const stems: [string, number][] = [];
  let all = 0;
  for (const [key, { weight }] of terms) {
    const telling = weight * rarityOf(key);
    postings.addEvidence(words, key, telling);
    if (isPair(key)) continue;
    stems.push([key, weight]);
    all += telling;
  }
  const room = Math.sqrt(1 + 3 * all);
  for (let place = 0; place < words.length; place++) words[place]! /= room;
  const vector = vectorOf(stems);
  const meaning = unit(vector);
  const nearness = index.meanings.nearness(meaning);
  const scores = words.map(
    (said, place) => said + MEANING_WEIGHT * nearness[place]! - (index.hasChildren[place] ? PARENT_STEP : 0),
  );
  return {
    terms,
    words,
    nearness,
    scores,
    course: index.meanings.toCourse(meaning),
    room,
    reach: length(vector),
  };
}

/** How much a term counts for being rare in English, from 0 to 1; a pair lies between its two words. */
export function rarityOf(term: string): number {
  const vectors = wordVectors();
  const [first = '', second = first] = isPair(term) ? term.split(' ') : [term];
  return (vectors.rarityOf(first) * vectors.rarityOf(second)) ** (RARITY_POWER / 2);
}
