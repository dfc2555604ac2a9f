import type { Id } from '#lib/model/basics.ts';
import type { Item } from '#lib/model/item.ts';
import type { Marked, Round } from './round.ts';

/** Marks of a topic in a round. */
export interface TopicMarks {
  topicId: Id;
  got: number;
  outOf: number;
}

export interface RoundSummary {
  /** In the order in which the topics first came. */
  topics: TopicMarks[];
  got: number;
  outOf: number;
  /** Items answered, each once. */
  count: number;
  /** From the start to the latest event. */
  seconds: number;
  /** Items that fell short of full marks, with the clip to reopen (null for none), in the order they came. */
  reopen: { item: Item; clipId: Id | null; got: number; outOf: number }[];
}

/**
 * What a round came to. Each item counts once, by its first answer: when a missed item comes back, its answer has
 * just been seen.
 */
export function summaryOf(round: Round): RoundSummary {
  const firsts = firstAnswers(round.marked);
  return {
    topics: byTopic(firsts),
    got: sum(firsts, (m) => m.marks),
    outOf: sum(firsts, (m) => m.item.marks),
    count: firsts.length,
    seconds: round.usedSeconds,
    reopen: firsts
      .filter((m) => m.marks < m.item.marks)
      .map(({ item, marks }) => ({ item, clipId: item.clipId, got: marks, outOf: item.marks })),
  };
}

const firstAnswers = (all: readonly Marked[]): Marked[] =>
  all.filter((one, i) => all.findIndex((other) => other.item.id === one.item.id) === i);

function byTopic(answers: readonly Marked[]): TopicMarks[] {
  const topics = new Map<Id, TopicMarks>();
  for (const { item, marks } of answers) {
    const before = topics.get(item.topicId) ?? { topicId: item.topicId, got: 0, outOf: 0 };
    topics.set(item.topicId, { ...before, got: before.got + marks, outOf: before.outOf + item.marks });
  }
  return [...topics.values()];
}

const sum = (answers: readonly Marked[], of: (m: Marked) => number): number =>
  answers.reduce((total, one) => total + of(one), 0);
