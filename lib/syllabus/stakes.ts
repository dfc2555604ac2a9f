import type { TopicCoverage } from './coverage.ts';
import { type Interval, intervalOfSum, wilson } from './interval.ts';

/** A part of the exam, 0 to 1, with the limits between which it lies at 95 %. */
export interface Stake extends Interval {
  part: number;
}

type Asked = Pick<TopicCoverage, 'share' | 'asked' | 'securedPart'>;

/**
 * What of the exam is at stake in a topic: its share times what is not secured. Its questions and lines stand for all
 * that can be asked in it, as a sample does: of `asked`, so many are secured, and Wilson's interval says what part of
 * the topic that may be. Where nothing is asked yet, anything from nothing to the whole share may be known.
 */
export function stakeOf({ share, asked, securedPart }: Asked): Stake {
  const { low, high } = wilson(securedPart * asked, asked);
  return { part: share * (1 - securedPart), low: share * (1 - high), high: share * (1 - low) };
}

/** What of the exam is secured over all topics: each is a sample of its own. */
export function securedOverall(topics: readonly Asked[]): Stake {
  const parts = topics.map(({ share, asked, securedPart }) => ({
    weight: share,
    estimate: securedPart,
    ...wilson(securedPart * asked, asked),
  }));
  const { estimate, low, high } = intervalOfSum(parts);
  return { part: estimate, low: Math.max(0, low), high: Math.min(1, high) };
}
