import { passageTerms } from './passage-terms.ts';
import { readableTerm } from './readable-term.ts';
import type { PassageInput, PassageTerm } from './passage-terms.ts';
import type { Posting, TopicIndex } from './topic-index.ts';
import { OFF_SYLLABUS_BELOW, PARENT_DISCOUNT, TOPIC_SATURATION } from './weights.ts';

/** A topic that a passage may belong to. */
export interface TopicSuggestion {
  topicId: string;
  /** See suggestTopics. */
  chance: number;
  /** Up to four words or pairs of words of the passage that decided, the weightiest first, as they stand in it. */
  terms: string[];
}

/** What a passage looks like it belongs to. */
export interface TopicMatch {
  /** The likeliest first; none where no word of the passage is known to the syllabus. */
  suggestions: TopicSuggestion[];
  /** The passage says little that any topic speaks of. Never set where there is nothing to go by. */
  offSyllabus: boolean;
}

const TERMS_SHOWN = 4;

/**
 * Ranks topics for a passage.
 *
 * `chance` (0 to 1) is a topic's part of the evidence over all topics: exp(score / t) divided by the sum of the same
 * over all of them, with t the square root of the best score. So scaled, the first suggestion's chance came within a
 * few hundredths of how often it was right on textbook paragraphs; for topics of another kind it is a guide only.
 * It speaks of topics of this syllabus alone: whether any fits at all is what `offSyllabus` says.
 */
export function suggestTopics(passage: PassageInput, index: TopicIndex, limit = 5): TopicMatch {
  const terms = passageTerms(passage, index.stems);
  const scores = scoresOf(terms, index);
  const best = scores.reduce((most, score) => Math.max(most, score), 0);
  const chances = chancesOf(scores, best);
  const places = [...scores.keys()]
    .filter((place) => (scores[place] ?? 0) > 0)
    .sort((a, b) => (scores[b] ?? 0) - (scores[a] ?? 0) || a - b)
    .slice(0, limit);
  return {
    suggestions: places.map((place) => ({
      topicId: index.topicIds[place] ?? '',
      chance: chances[place] ?? 0,
      terms: decidingTerms(terms, index, place),
    })),
    offSyllabus: scores.length > 0 && terms.size > 0 && best < OFF_SYLLABUS_BELOW * ceilingOf(terms, index),
  };
}

function scoresOf(terms: Map<string, PassageTerm>, index: TopicIndex): Float64Array {
  const scores = new Float64Array(index.topicIds.length);
  for (const [key, term] of terms) {
    const posting = index.postings.get(key);
    if (!posting) continue;
    for (const [place, weight] of posting.weights) {
      scores[place] = (scores[place] ?? 0) + evidence(term, posting, weight);
    }
  }
  return scores.map((score, place) => (index.hasChildren[place] ? score * PARENT_DISCOUNT : score));
}

/** What one term says for a topic that gives it a weight. */
function evidence(term: PassageTerm, posting: Posting, weight: number): number {
  return (term.weight * posting.idf * weight * (TOPIC_SATURATION + 1)) / (weight + TOPIC_SATURATION);
}

function chancesOf(scores: Float64Array, best: number): Float64Array {
  const spread = Math.sqrt(best) || 1;
  const odds = scores.map((score) => Math.exp((score - best) / spread));
  const sum = odds.reduce((total, odd) => total + odd, 0);
  return odds.map((odd) => odd / sum);
}

/** The evidence if one topic held every word of the passage once; words unknown to the syllabus are the rarest. */
function ceilingOf(terms: Map<string, PassageTerm>, index: TopicIndex): number {
  let ceiling = 0;
  for (const [key, term] of terms) {
    if (!key.includes(' ')) ceiling += term.weight * (index.postings.get(key)?.idf ?? index.unseenIdf);
  }
  return ceiling;
}

/** A pair of words stands for its words, too, so it is shown rather than either of them. */
function decidingTerms(terms: Map<string, PassageTerm>, index: TopicIndex, place: number): string[] {
  const said = new Map<string, number>();
  for (const [key, term] of terms) {
    const posting = index.postings.get(key);
    const weight = posting?.weights.get(place);
    if (posting && weight) said.set(key, evidence(term, posting, weight));
  }
  const inAll = (key: string): number =>
    [key, ...(key.includes(' ') ? key.split(' ') : [])].reduce((sum, part) => sum + (said.get(part) ?? 0), 0);
  const shown: string[] = [];
  for (const key of [...said.keys()].sort((a, b) => inAll(b) - inAll(a))) {
    if (shown.length === TERMS_SHOWN) break;
    if (!shown.some((other) => overlap(other, key))) shown.push(key);
  }
  return shown.map((key) => readableTerm(terms.get(key)?.surface ?? key));
}

/** Whether two terms, each one stem or two, share a stem. */
function overlap(a: string, b: string): boolean {
  const stems = a.split(' ');
  return b.split(' ').some((stem) => stems.includes(stem));
}
