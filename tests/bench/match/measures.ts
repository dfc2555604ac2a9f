import { suggestTopics } from '#lib/syllabus/match/index.ts';
import type { TopicIndex, TopicMatch } from '#lib/syllabus/match/index.ts';
import type { Ranker } from './baselines.ts';
import type { Labelled } from './collection.ts';

export const matchOf = (text: string, index: TopicIndex): TopicMatch =>
  suggestTopics({ text, headings: [], title: '' }, index);

/** Our own ranking. */
export const ours =
  (index: TopicIndex): Ranker =>
  (text) =>
    matchOf(text, index).suggestions.map(({ topicId }) => Number(topicId));

/** Per cent of texts with one of their topics among the first three. */
export function topThree(rank: Ranker, queries: readonly Labelled[]): number {
  const found = queries.filter((q) =>
    rank(q.text)
      .slice(0, 3)
      .some((topic) => q.topics.includes(topic)),
  );
  return (100 * found.length) / queries.length;
}

const BINS = 10;

/**
 * Expected calibration error of the first suggestion, in per cent: chances in ten bins of equal width; for each the
 * distance of the mean chance from the part that is right, weighted by how many are in it (Naeini, Cooper &
 * Hauskrecht 2015, "Obtaining well calibrated probabilities using Bayesian binning", AAAI).
 */
export function calibrationError(index: TopicIndex, queries: readonly Labelled[]): number {
  const bins = Array.from({ length: BINS }, () => ({ said: 0, right: 0 }));
  for (const { text, topics } of queries) {
    const [first] = matchOf(text, index).suggestions;
    const chance = first?.chance ?? 0;
    const bin = bins[Math.min(BINS - 1, Math.floor(chance * BINS))]!;
    bin.said += chance;
    if (first && topics.includes(Number(first.topicId))) bin.right += 1;
  }
  const off = bins.reduce((sum, { said, right }) => sum + Math.abs(said - right), 0);
  return (100 * off) / queries.length;
}

/** Per cent of texts that look outside the syllabus. */
export function outside(index: TopicIndex, texts: readonly string[]): number {
  return (100 * texts.filter((text) => matchOf(text, index).offSyllabus).length) / texts.length;
}
