export type { PassageInput } from './passage-terms.ts';
export { suggestTopics } from './suggest-topics.ts';
export type { TopicMatch, TopicSuggestion } from './suggest-topics.ts';
export { buildTopicIndex } from './topic-index.ts';
export type { TaggedPassage, TopicIndex, TopicIndexInput } from './topic-index.ts';
