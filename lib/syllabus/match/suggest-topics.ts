import { chancesOf, looksOutside } from './chance.ts';
import { decidingTerms } from './deciding-terms.ts';
import { evidenceFor } from './evidence.ts';
import type { PassageInput } from './passage-terms.ts';
import type { TopicIndex } from './topic-index.ts';
import { NEAR_ENOUGH } from './weights.ts';

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
  /** The likeliest first; none where the passage neither shares a word with the syllabus nor is near it in meaning. */
  suggestions: TopicSuggestion[];
  /** The passage says little that any topic speaks of. Never set where there is nothing to go by. */
  offSyllabus: boolean;
}

/**
 * Ranks topics for a passage.
 *
 * `chance` (0 to 1) is how likely it is that the passage belongs to the topic, if it belongs to any of this syllabus:
 * on passages of two labelled dictionaries and a textbook, what was said with a chance of p was right in about that
 * part of the cases (see docs/method.md). Whether any topic fits at all is what `offSyllabus` says.
 */
export function suggestTopics(passage: PassageInput, index: TopicIndex, limit = 5): TopicMatch {
  const evidence = evidenceFor(passage, index);
  const { terms, words, nearness, scores, reach } = evidence;
  const chances = chancesOf(evidence);
  const nearEnough = NEAR_ENOUGH * (1 + 1 / reach);
  const places = [...scores.keys()]
    .filter((place) => words[place]! > 0 || nearness[place]! >= nearEnough)
    .sort((a, b) => scores[b]! - scores[a]! || a - b)
    .slice(0, limit);
  return {
    suggestions: places.map((place) => ({
      topicId: index.topicIds[place]!,
      chance: chances[place]!,
      terms: decidingTerms(evidence, index, place),
    })),
    offSyllabus: scores.length > 0 && terms.size > 0 && looksOutside(evidence),
  };
}
