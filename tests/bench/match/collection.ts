import { readFileSync } from 'node:fs';
import type { Random } from '../random.ts';

/** A subject to match to. */
export interface LabelledTopic {
  title: string;
  text: string;
}

/** A text with the places of the topics it was labelled with. */
export interface Labelled {
  topics: number[];
  text: string;
}

/** A labelled collection; see tests/data/match/README.md. */
export interface Collection {
  topics: LabelledTopic[];
  train: Labelled[];
  test: Labelled[];
}

/** Reads tests/data/match/NAME.tsv. */
export function readCollection(name: string): Collection {
  const file = new URL(`../../data/match/${name}.tsv`, import.meta.url);
  const collection: Collection = { topics: [], train: [], test: [] };
  const placeOf = new Map<string, number>();
  for (const line of readFileSync(file, 'utf8').trimEnd().split('\n')) {
    const [kind, name = '', ...rest] = line.split('\t');
    if (kind === 'topic') {
      placeOf.set(name, collection.topics.length);
      collection.topics.push({ title: name, text: rest[0] ?? '' });
    } else {
      const topics = name.split('|').map((title) => placeOf.get(title)!);
      collection[kind as 'train' | 'test'].push({ topics, text: rest.join('. ') });
    }
  }
  return collection;
}

/** A draw of so many tagged texts for each topic, and all other texts to find the topic of. */
export interface Draw {
  tagged: { topic: number; text: string }[];
  queries: Labelled[];
}

export function draw(texts: readonly Labelled[], topicCount: number, each: number, random: Random): Draw {
  const taken = new Set<Labelled>();
  const tagged = Array.from({ length: topicCount }, (_, topic) => {
    const own = shuffled(
      texts.filter((t) => t.topics.includes(topic) && !taken.has(t)),
      random,
    ).slice(0, each);
    own.forEach((t) => taken.add(t));
    return own.map(({ text }) => ({ topic, text }));
  }).flat();
  return { tagged, queries: texts.filter((t) => !taken.has(t)) };
}

function shuffled<T>(items: readonly T[], random: Random): T[] {
  const out = [...items];
  for (let i = out.length - 1; i > 0; i--) {
    const j = random.below(i + 1);
    [out[i], out[j]] = [out[j]!, out[i]!];
  }
  return out;
}
