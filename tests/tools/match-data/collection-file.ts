import { createHash } from 'node:crypto';

/** A subject that definitions are labelled with. */
export interface CollectedTopic {
  title: string;
  /** What the subject is, in a sentence or more; empty where the source has none. */
  text: string;
}

/** A definition with the places of its subjects in the list of topics. */
export interface CollectedPassage {
  topics: number[];
  /** The word or phrase that it defines. */
  head: string;
  text: string;
}

export type Part = 'train' | 'test';

/** What is taken in all: topics with enough passages in both parts, and at most so many passages of each. */
export interface Bounds {
  leastInTest: number;
  mostInTrain: number;
  mostInTest: number;
}

/** A passage is cut after so many characters: a student's clip is a paragraph, and the file stays small. */
const LONGEST = 420;
/** Below so many words a definition says next to nothing ("Same as ..."). */
const FEWEST_WORDS = 8;

/** Half of the words defined are for training and half for testing, by a hash of the word: fixed for good. */
export const partOf = (head: string): Part => (hashOf(head).charCodeAt(0) % 2 === 0 ? 'train' : 'test');

const hashOf = (text: string): string => createHash('sha256').update(text).digest('hex');

/** The text of a collection's file: lines of fields parted by tabs, as tests/data/match/README.md says. */
export function collectionFile(
  topics: readonly CollectedTopic[],
  passages: readonly CollectedPassage[],
  bounds: Bounds,
): string {
  const usable = inHashOrder(passages).filter(({ text }) => text.split(' ').length >= FEWEST_WORDS);
  const inPart = (part: Part, place: number): CollectedPassage[] =>
    usable.filter((p) => partOf(p.head) === part && p.topics.includes(place));
  const kept = [...topics.keys()].filter(
    (place) => inPart('test', place).length >= bounds.leastInTest && inPart('train', place).length > 0,
  );
  const most = { train: bounds.mostInTrain, test: bounds.mostInTest };
  const lines = kept.map((place) => `topic\t${topics[place]!.title}\t${topics[place]!.text}`);
  for (const part of ['train', 'test'] as const) {
    const taken = new Set(kept.flatMap((place) => inPart(part, place).slice(0, most[part])));
    for (const { topics: own, head, text } of usable.filter((p) => taken.has(p))) {
      const titles = own.filter((place) => kept.includes(place)).map((place) => topics[place]!.title);
      lines.push([part, titles.join('|'), head, text].join('\t'));
    }
  }
  return `${lines.join('\n')}\n`;
}

/** An order that has nothing to do with the alphabet, so that the first few of a topic are a fair sample. */
function inHashOrder(passages: readonly CollectedPassage[]): CollectedPassage[] {
  const seen = new Map<string, CollectedPassage>();
  for (const p of passages) {
    const text = cut(p.text);
    seen.set(hashOf(`${p.head}\n${text}`), { ...p, text });
  }
  return [...seen.entries()].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, p]) => p);
}

function cut(text: string): string {
  return text.length <= LONGEST ? text : text.slice(0, text.lastIndexOf(' ', LONGEST));
}
