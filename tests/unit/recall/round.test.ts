import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Attempt } from '#lib/model/attempt.ts';
import type { Item } from '#lib/model/item.ts';
import { choicesOf } from '#lib/recall/marks.ts';
import {
  type AttemptDraft,
  isReturn,
  ITEMS_BETWEEN,
  marked,
  renewed,
  type Round,
  secondsLeft,
  startRound,
  stopped,
  uncovered,
} from '#lib/recall/round.ts';
import { DAY, idOf, itemOf, START } from './builders.ts';

const items = (count: number): Item[] => Array.from({ length: count }, (_, n) => itemOf(n));
const roundOf = (queue: readonly Item[], minutes = 2): Round =>
  startRound({ id: idOf(7001), courseId: idOf(7002), at: START, minutes, queue });

/** Uncover the item in hand and mark it, some seconds from the start. */
function answer(round: Round, marks: number, seconds = 10): Round {
  const at = START + seconds * 1000;
  return marked(uncovered(round, at), { at, marks, typed: '' }).round;
}

describe('a round', () => {
  it('starts with the first item, covered', () => {
    const round = roundOf(items(3));
    expect(round).toMatchObject({ current: { id: idOf(0) }, uncoveredAt: null, shownAt: START, ended: null });
    expect(secondsLeft(round, START)).toBe(120);
  });

  it('takes an item that is queued twice once', () => {
    expect(roundOf([...items(3), ...items(2)]).queue.map((item) => item.id)).toEqual([1, 2].map(idOf));
  });

  it('gives a valid attempt for a popup left open for days', () => {
    const at = START + 3 * DAY;
    const { attempt } = marked(uncovered(roundOf(items(2)), at), { at, marks: 1, typed: '' });
    expect(attempt?.seconds).toBe(86_400);
  });

  it('gives an attempt for each answer', () => {
    const open = uncovered(roundOf([itemOf(1, { marks: 3 }), itemOf(2)]), START + 5000);
    const { attempt, round } = marked(open, { at: START + 8500, marks: 2, typed: 'g times z' });
    expect(attempt).toEqual({
      courseId: idOf(7002),
      topicId: idOf(9001),
      itemKind: 'question',
      itemId: idOf(1),
      roundId: idOf(7001),
      at: START + 8500,
      seconds: 8.5,
      marks: 2,
      outOf: 3,
      typed: 'g times z',
      order: 'gain',
      turned: false,
    });
    expect(round).toMatchObject({ current: { id: idOf(2) }, uncoveredAt: null, shownAt: START + 8500 });
  });

  it('records with its attempts in which order it went, and from which side they were asked', () => {
    const queue = [itemOf(1), itemOf(2)];
    const start = { id: idOf(7001), courseId: idOf(7002), at: START, minutes: 2, queue };
    const first = uncovered(startRound({ ...start, order: 'backToFront', turned: [idOf(2)] }), START);
    const one = marked(first, { at: START, marks: 1, typed: '' });
    const two = marked(uncovered(one.round, START), { at: START, marks: 1, typed: '' });
    expect(one.attempt).toMatchObject({ order: 'backToFront', turned: false });
    expect(two.attempt).toMatchObject({ order: 'backToFront', turned: true });
  });

  it('ends when no item is left, or had none', () => {
    expect(answer(roundOf(items(1)), 1)).toMatchObject({ ended: 'empty', current: null });
    expect(roundOf([])).toMatchObject({ ended: 'empty', current: null });
  });

  it('ends when time is up, after the item in hand is marked', () => {
    const late = uncovered(roundOf(items(5)), START + 125_000);
    expect(late).toMatchObject({ ended: null, current: { id: idOf(0) } });
    const { round, attempt } = marked(late, { at: START + 130_000, marks: 1, typed: '' });
    expect(attempt?.seconds).toBe(130);
    expect(round).toMatchObject({ ended: 'time', current: null });
  });

  it('ends when the student stops, and then stays as it is', () => {
    const round = stopped(answer(roundOf(items(5)), 1), START + 20_000);
    expect(round).toMatchObject({ ended: 'stopped', current: null, usedSeconds: 20 });
    expect(stopped(round, START + 30_000)).toBe(round);
    expect(uncovered(round, START + 30_000)).toBe(round);
    expect(secondsLeft(round, START)).toBe(0);
  });

  it('lets events out of turn change nothing', () => {
    const covered = roundOf(items(2));
    const early = marked(covered, { at: START, marks: 1, typed: '' });
    expect(early).toEqual({ round: covered, attempt: null });
    const open = uncovered(covered, START + 1000);
    expect(uncovered(open, START + 2000)).toBe(open);
  });

  it.each([0.7, 2, -1, NaN])('refuses %s marks of one', (marks) => {
    const open = uncovered(roundOf(items(2)), START);
    expect(() => marked(open, { at: START, marks, typed: '' })).toThrow(RangeError);
  });

  it('is plain data and leaves earlier states alone', () => {
    const before = roundOf(items(6));
    const copy = structuredClone(before);
    const after = answer(before, 0);
    expect(before).toEqual(copy);
    expect(JSON.parse(JSON.stringify(after))).toEqual(after);
  });
});

describe('a missed item', () => {
  const asked = (round: Round, marks: (n: number) => number): string[] => {
    const seen: string[] = [];
    for (let now = round; now.current !== null; now = answer(now, marks(seen.length - 1))) {
      seen.push(now.current.id);
    }
    return seen;
  };

  it('comes back once, after all others', () => {
    const seen = asked(roundOf(items(6)), (n) => (n === 0 || n === 4 ? 0 : 1));
    expect(seen).toEqual([0, 1, 2, 3, 4, 5, 0].map(idOf));
  });

  it('does not come back where fewer than three others are left', () => {
    expect(asked(roundOf(items(3)), () => 0)).toEqual([0, 1, 2].map(idOf));
  });

  it('does not come back for a second miss', () => {
    expect(asked(roundOf(items(8)), (n) => (n === 0 || n === 8 ? 0 : 1))).toHaveLength(9);
  });

  it('does not come back for part marks', () => {
    expect(asked(roundOf(items(6)), () => 0.5)).toHaveLength(6);
  });

  it('is known as a return when it is back', () => {
    let round = roundOf(items(4));
    expect(isReturn(round)).toBe(false);
    round = answer(round, 0);
    for (let n = 0; n < 3; n++) round = answer(round, 1);
    expect(round.current?.id).toBe(idOf(0));
    expect(isReturn(round)).toBe(true);
  });
});

describe('time left', () => {
  it('goes down to 0 and no further', () => {
    const round = roundOf(items(3));
    expect(secondsLeft(round, START + 45_500)).toBe(74.5);
    expect(secondsLeft(round, START + DAY)).toBe(0);
  });

  it('is neither more nor less for a clock set back', () => {
    const round = answer(roundOf(items(5)), 1, 30);
    expect(secondsLeft(round, START - DAY)).toBe(90);
    const back = uncovered(round, START - DAY);
    expect(secondsLeft(back, START - DAY + 20_000)).toBe(70);
    const { attempt } = marked(back, { at: START - DAY + 20_000, marks: 1, typed: '' });
    expect(attempt?.seconds).toBe(0);
  });
});

describe('any round', () => {
  const anyItem = fc
    .tuple(fc.nat(20), fc.integer({ min: 1, max: 4 }))
    .map(([n, marks]) => itemOf(n, { marks }));
  const anyEvent = fc.record({
    kind: fc.constantFrom('uncovered', 'marked', 'marked', 'stopped' as const),
    // Now and then the clock is set back.
    step: fc.oneof(
      { weight: 9, arbitrary: fc.nat(9000) },
      { weight: 1, arbitrary: fc.integer({ min: -DAY, max: 0 }) },
    ),
    pick: fc.nat(),
    isMissed: fc.boolean(),
  });

  it('asks no item twice unless it was missed, and gives valid attempts', () => {
    const anyQueue = fc.array(anyItem, { maxLength: 30 });
    const anyMinutes = fc.integer({ min: 1, max: 10 });
    const anyEvents = fc.array(anyEvent, { maxLength: 80 });
    fc.assert(
      fc.property(anyQueue, anyMinutes, anyEvents, (queue, minutes, events) => {
        let round = roundOf(queue, minutes);
        let at = START;
        const attempts: AttemptDraft[] = [];
        for (const event of events) {
          at = Math.max(0, at + event.step);
          if (event.kind === 'stopped' && event.pick % 8 === 0) round = stopped(round, at);
          else if (event.kind === 'marked') {
            const choices = choicesOf(round.current?.marks ?? 1);
            const marks = event.isMissed ? 0 : choices[event.pick % choices.length]!.marks;
            const result = marked(uncovered(round, at), { at, marks, typed: '' });
            if (result.attempt) attempts.push(result.attempt);
            round = result.round;
          } else round = uncovered(round, at);
          const left = secondsLeft(round, at + event.step);
          expect(left).toBeGreaterThanOrEqual(0);
          expect(left).toBeLessThanOrEqual(minutes * 60);
          expect(round.current === null).toBe(round.ended !== null);
        }
        for (const [i, attempt] of attempts.entries()) {
          expect(Attempt.safeParse({ id: idOf(i), ...attempt }).success).toBe(true);
          const again = attempts.slice(i + 1).filter((other) => other.itemId === attempt.itemId);
          if (attempt.marks > 0) expect(again).toEqual([]);
          expect(again.length).toBeLessThanOrEqual(1);
          const next = attempts.findIndex((other, k) => k > i && other.itemId === attempt.itemId);
          if (next >= 0) expect(next - i).toBeGreaterThan(ITEMS_BETWEEN);
        }
      }),
    );
  });
});

describe('items as they are by now', () => {
  const [first, second, third] = items(3) as [Item, Item, Item];
  const without =
    (...gone: Item[]) =>
    (item: Item) =>
      gone.some(({ id }) => id === item.id) ? null : item;

  it('are asked as they are, in hand and to come, covered or not', () => {
    const newer = (item: Item): Item => ({ ...item, covers: 'new', marks: 2 });
    for (const round of [roundOf(items(3)), uncovered(roundOf(items(3)), START + 1000)]) {
      const now = renewed(round, newer, START + 2000);
      expect(now).toEqual({ ...round, current: newer(first), queue: [second, third].map(newer) });
    }
  });

  it('are left out where they are gone; what was marked of them stays', () => {
    const round = answer(roundOf(items(3)), 1);
    const now = renewed(round, without(first, third), START + 20_000);
    expect(now).toMatchObject({ current: second, queue: [], marked: [{ item: first, marks: 1 }] });
  });

  it('give way to the next where the one in hand is gone, which is covered and timed anew', () => {
    const open = uncovered(roundOf(items(3)), START + 5000);
    const now = renewed(open, without(first), START + 8000);
    expect(now).toMatchObject({ current: second, queue: [third], uncoveredAt: null, shownAt: START + 8000 });
    expect(secondsLeft(now, START + 8000)).toBe(112);
  });

  it('end the round where none is left, and change nothing once it has ended', () => {
    const now = renewed(roundOf(items(2)), () => null, START + 1000);
    expect(now).toMatchObject({ current: null, ended: 'empty' });
    expect(renewed(now, without(), START + 2000)).toBe(now);
  });
});
