import type { Id } from '#lib/model/basics.ts';
import { betaChance, betaQuantile } from './beta.ts';
import type { Cause, Marking } from './marking.ts';
import { marksByTopic, type TopicMarks } from './results.ts';

/**
 * When a topic is weak. All our choices:
 * - after two sittings at least: the method has two or three papers before mending (common practice);
 * - from two parts on: one bad question is no pattern;
 * - where the chance that less than 70 % of its marks would be got is at least 80 %.
 */
export const MEND = { sittings: 2, parts: 2, aim: 0.7, chance: 0.8 } as const;

/** A topic that lost marks. */
export interface MendTopic extends TopicMarks {
  topicId: Id;
  missing: number;
  /** What most of the missing marks were lost by; of causes alike, the first in the order of CAUSES. */
  mainCause: Cause;
  /** The chance, 0 to 1, that less than the aim would be got of its marks: see belowAim. */
  belowAim: number;
}

export interface MendList {
  /** Weak topics, those that lost most marks first; null before there are enough sittings. */
  weak: MendTopic[] | null;
  /** Topics that lost marks and are not weak by the measure, or not surely so; those that lost most marks first. */
  others: MendTopic[];
  /** Marks lost in parts without a topic: nothing can be mended by them until they are given one. */
  withoutTopic: number;
}

/**
 * The topics to mend after some sittings, with the marks lost by cause. A sitting in which nothing is marked yet is no
 * sitting here: strict marking would call everything weak. Within one that is begun, unmarked parts are lost.
 */
export function mendList(markings: readonly Marking[]): MendList {
  const marked = markings.filter(({ parts }) => parts.some(({ isMarked }) => isMarked));
  const topics = marksByTopic(marked);
  const lossy = topics.flatMap((one) => mendTopic(one)).sort((a, b) => b.missing - a.missing);
  const isEnough = marked.length >= MEND.sittings;
  const isWeak = (one: MendTopic): boolean =>
    isEnough && one.parts >= MEND.parts && one.belowAim >= MEND.chance;
  const loose = topics.find(({ topicId }) => topicId === null);
  return {
    weak: isEnough ? lossy.filter(isWeak) : null,
    others: lossy.filter((one) => !isWeak(one)),
    withoutTopic: loose ? loose.outOf - loose.got : 0,
  };
}

function mendTopic(marks: TopicMarks): MendTopic[] {
  const { topicId, got, outOf, lost } = marks;
  const missing = outOf - got;
  // Marks that are divided by three leave rounding errors.
  if (topicId === null || missing < 1e-9) return [];
  const [mainCause] = [...lost].reduce((most, one) => (one[1] > most[1] + 1e-9 ? one : most));
  return [{ ...marks, topicId, missing, mainCause, belowAim: belowAim(marks) }];
}

/**
 * The chance that less than the aim would be got of a topic's marks: what its parts told, with as many trials as
 * their effective number, on a prior that takes every part of the marks for as likely (Bayes and Laplace: Beta(1, 1)).
 */
const belowAim = (marks: Pick<TopicMarks, 'estimate' | 'effective'>): number =>
  betaChance(...beliefIn(marks), MEND.aim);

/** The two parameters of the Beta distribution of the part of a topic's marks that would be got. */
const beliefIn = ({ estimate, effective }: Pick<TopicMarks, 'estimate' | 'effective'>): [number, number] => [
  1 + estimate * effective,
  1 + (1 - estimate) * effective,
];

/** What is to be expected of a topic in the next sitting by the marks of those before, with limits at 95 %. */
export function forecastFrom(marks: Pick<TopicMarks, 'estimate' | 'effective'>): {
  estimate: number;
  low: number;
  high: number;
} {
  const [a, b] = beliefIn(marks);
  return { estimate: a / (a + b), low: betaQuantile(a, b, 0.025), high: betaQuantile(a, b, 0.975) };
}
