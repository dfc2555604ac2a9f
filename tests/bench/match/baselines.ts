import MiniSearch from 'minisearch';
import { stemmer } from 'stemmer';
import { STOP_WORDS } from '#lib/syllabus/match/stop-words.ts';
import type { LabelledTopic } from './collection.ts';

/** Ranks topics for a text, the best first; may leave out topics that it finds nothing in common with. */
export type Ranker = (text: string) => number[];

/** Tagged texts as part of their topic's text, or as documents of their own of which the best one counts. */
export type TaggedAs = 'appended' | 'documents';

interface Document {
  topic: number;
  title: string;
  text: string;
}

type Tagged = readonly { topic: number; text: string }[];

function documentsOf(topics: readonly LabelledTopic[], tagged: Tagged, as: TaggedAs): Document[] {
  const textsOf = (topic: number) => tagged.filter((t) => t.topic === topic).map(({ text }) => text);
  const own = topics.map(({ title, text }, topic) => ({
    topic,
    title,
    text: as === 'appended' ? [text, ...textsOf(topic)].join('\n') : text,
  }));
  return as === 'appended' ? own : [...own, ...tagged.map((t) => ({ ...t, title: '' }))];
}

/** MiniSearch as it comes. */
export function miniSearch(topics: readonly LabelledTopic[], tagged: Tagged, as: TaggedAs): Ranker {
  const search = new MiniSearch<Document & { id: number }>({
    fields: ['title', 'text'],
    storeFields: ['topic'],
  });
  search.addAll(documentsOf(topics, tagged, as).map((document, id) => ({ ...document, id })));
  return (text) => [...new Set(search.search(text).map((found) => found['topic'] as number))];
}

const K1 = 1.2;
const B = 0.75;

/** BM25 (Robertson & Zaragoza 2009, with the usual k1 and b) over Porter stems without stop words. */
export function bm25(topics: readonly LabelledTopic[], tagged: Tagged, as: TaggedAs): Ranker {
  const documents = documentsOf(topics, tagged, as);
  const counts = documents.map(({ title, text }) => countOf(stemsOf(`${title}\n${text}`)));
  const lengths = counts.map((count) => [...count.values()].reduce((sum, n) => sum + n, 0));
  const mean = lengths.reduce((sum, n) => sum + n, 0) / lengths.length;
  const having = countOf(counts.flatMap((count) => [...count.keys()]));
  const idf = (stem: string) => {
    const n = having.get(stem) ?? 0;
    return Math.log(1 + (documents.length - n + 0.5) / (n + 0.5));
  };
  const postings = new Map<string, [document: number, times: number][]>();
  counts.forEach((count, i) => {
    for (const [stem, n] of count) postings.set(stem, [...(postings.get(stem) ?? []), [i, n]]);
  });
  return (text) => {
    const scores = new Float64Array(documents.length);
    for (const [stem, times] of countOf(stemsOf(text))) {
      for (const [i, n] of postings.get(stem) ?? []) {
        scores[i]! += (times * idf(stem) * n * (K1 + 1)) / (n + K1 * (1 - B + (B * lengths[i]!) / mean));
      }
    }
    const best = new Map<number, number>();
    scores.forEach((score, i) => {
      const { topic } = documents[i]!;
      if (score > (best.get(topic) ?? 0)) best.set(topic, score);
    });
    return [...best].sort(([, a], [, b]) => b - a).map(([topic]) => topic);
  };
}

const stemsOf = (text: string): string[] =>
  (text.toLowerCase().match(/[a-z]+/g) ?? [])
    .filter((word) => !STOP_WORDS.has(word))
    .map((word) => stemmer(word));

function countOf(items: readonly string[]): Map<string, number> {
  const counts = new Map<string, number>();
  for (const item of items) counts.set(item, (counts.get(item) ?? 0) + 1);
  return counts;
}
