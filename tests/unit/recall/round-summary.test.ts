import { expect, it } from 'vitest';
import { marked, type Round, startRound, stopped, uncovered } from '#lib/recall/round.ts';
import { summaryOf } from '#lib/recall/round-summary.ts';
import { idOf, itemOf, START } from './builders.ts';

const [waves, tides, clip] = [idOf(9001), idOf(9002), idOf(8001)];
const queue = [
  itemOf(1, { marks: 3, clipId: clip }),
  itemOf(2, { topicId: tides }),
  itemOf(3),
  itemOf(4, { topicId: tides, marks: 2 }),
];

/** Answer the items in turn, ten seconds each. */
const played = (...marks: number[]): Round =>
  marks.reduce(
    (round, m, i) => {
      const at = START + (i + 1) * 10_000;
      return marked(uncovered(round, at), { at, marks: m, typed: '' }).round;
    },
    startRound({ id: idOf(7001), courseId: idOf(7002), at: START, minutes: 2, queue }),
  );

it('adds up marks by topic, with seconds and count', () => {
  const summary = summaryOf(played(3, 0.5, 1, 2));
  expect(summary.topics).toEqual([
    { topicId: waves, got: 4, outOf: 4 },
    { topicId: tides, got: 2.5, outOf: 3 },
  ]);
  expect(summary).toMatchObject({ got: 6.5, outOf: 7, count: 4, seconds: 40 });
});

it('lists what fell short, with its clip or none', () => {
  const { reopen } = summaryOf(played(2, 0.5, 1, 2));
  expect(reopen).toEqual([
    { item: queue[0], clipId: clip, got: 2, outOf: 3 },
    { item: queue[1], clipId: null, got: 0.5, outOf: 1 },
  ]);
});

it('counts an item that came back once, by its first answer', () => {
  const round = played(0, 1, 1, 2, 3);
  expect(round.marked).toHaveLength(5);
  const summary = summaryOf(round);
  expect(summary).toMatchObject({ got: 4, outOf: 7, count: 4, seconds: 50 });
  expect(summary.reopen.map((one) => one.got)).toEqual([0]);
});

it('is empty for a round stopped at once', () => {
  expect(summaryOf(stopped(played(), START + 3000))).toEqual({
    topics: [],
    got: 0,
    outOf: 0,
    count: 0,
    seconds: 3,
    reopen: [],
  });
});
