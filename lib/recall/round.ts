import type { Attempt } from '#lib/model/attempt.ts';
import type { Id } from '#lib/model/basics.ts';
import type { Item } from '#lib/model/item.ts';
import type { RoundOrder } from '#lib/model/round-order.ts';
import { isChoice } from './marks.ts';

/**
 * A missed item comes back once, after all others of the round, if there are at least this many. Not sooner: its
 * answer has just been seen, and practice so soon after adds little, while others wait (docs/method.md).
 */
export const ITEMS_BETWEEN = 3;

/** The longest attempt that the model of an attempt allows, in seconds. */
const LONGEST_ATTEMPT = 86_400;

/** How one answer went. */
export interface Marked {
  item: Item;
  marks: number;
  seconds: number;
}

/** The state of one round: plain data. Moments are epoch ms. */
export interface Round {
  id: Id;
  courseId: Id;
  minutes: number;
  /** The item in hand, its answer covered until `uncoveredAt`; null once the round has ended. */
  current: Item | null;
  shownAt: number;
  uncoveredAt: number | null;
  /** Items still to come. */
  queue: Item[];
  marked: Marked[];
  order: RoundOrder;
  /** Ids of items that are asked from the answer's side. */
  turned: readonly Id[];
  /** Seconds that had gone by at the latest event, and when that was. */
  usedSeconds: number;
  lastAt: number;
  ended: 'time' | 'empty' | 'stopped' | null;
}

/** An attempt without its id, which the caller makes. */
export type AttemptDraft = Omit<Attempt, 'id'>;

/**
 * Start a round.
 * @param start `queue` best first, where an item that comes twice counts once; `minutes` above 0; `at` in epoch ms; `order` and `turned` are
 *   recorded with its attempts: what gains most, and nothing turned, unless given
 */
export function startRound(start: {
  id: Id;
  courseId: Id;
  at: number;
  minutes: number;
  queue: readonly Item[];
  order?: RoundOrder;
  turned?: Iterable<Id>;
}): Round {
  const { id, courseId, at, minutes, order = 'gain', turned = [] } = start;
  const queue = [...new Map(start.queue.map((item) => [item.id, item])).values()];
  const clock = { usedSeconds: 0, lastAt: at, shownAt: at, uncoveredAt: null };
  return shown(
    {
      id,
      courseId,
      minutes,
      order,
      turned: [...turned],
      queue,
      marked: [],
      ended: null,
      current: null,
      ...clock,
    },
    at,
  );
}

/** The student uncovers the answer. Out of turn (already uncovered, or ended) it changes nothing. */
export function uncovered(round: Round, at: number): Round {
  if (round.current === null || round.uncoveredAt !== null) return round;
  return { ...clocked(round, at), uncoveredAt: at };
}

/**
 * The student marks the answer that is uncovered: gives the attempt to keep, and the round with its next item, or
 * ended where time is up or no item is left. Out of turn (still covered, or ended) it changes nothing, and there is
 * no attempt.
 * @param answer `marks` one of the choices for the item (marks.ts); `typed` what the student typed, or ''
 * @throws RangeError when the item cannot be given these marks
 */
export function marked(
  round: Round,
  answer: { at: number; marks: number; typed: string },
): { round: Round; attempt: AttemptDraft | null } {
  const { current: item } = round;
  if (item === null || round.uncoveredAt === null) return { round, attempt: null };
  if (!isChoice(answer.marks, item.marks)) throw new RangeError(`${answer.marks} of ${item.marks} marks`);
  const attempt = draftOf(round, item, answer);
  const kept = [...round.marked, { item, marks: attempt.marks, seconds: attempt.seconds }];
  const queue = answer.marks === 0 ? withReturn(round, item) : round.queue;
  return { round: shown({ ...clocked(round, answer.at), marked: kept, queue }, answer.at), attempt };
}

/**
 * The round with its items as they are by now: one that was changed is asked as it is, one that is gone is left out.
 * @param byNow the item as it is now; null where it is gone
 */
export function renewed(round: Round, byNow: (item: Item) => Item | null, at: number): Round {
  if (round.current === null) return round;
  const queue = round.queue.flatMap((item) => byNow(item) ?? []);
  const current = byNow(round.current);
  return current ? { ...round, current, queue } : shown({ ...clocked(round, at), queue }, at);
}

/** The student stops; an item in hand goes unmarked. A round that has ended stays as it is. */
export function stopped(round: Round, at: number): Round {
  return round.ended === null ? ended(clocked(round, at), 'stopped') : round;
}

/**
 * Seconds left of the round at a moment: from all of them down to 0. Only time that passes forwards is counted, so
 * a clock set back neither gives nor takes any. 0 once the round has ended.
 */
export function secondsLeft(round: Round, now: number): number {
  return round.ended === null ? Math.max(0, round.minutes * 60 - clocked(round, now).usedSeconds) : 0;
}

/** Whether the item in hand was missed earlier in this round. */
export const isReturn = (round: Round): boolean =>
  round.marked.some(({ item }) => item.id === round.current?.id);

function draftOf(
  round: Round,
  item: Item,
  answer: { at: number; marks: number; typed: string },
): AttemptDraft {
  return {
    courseId: round.courseId,
    topicId: item.topicId,
    itemKind: item.kind,
    itemId: item.id,
    roundId: round.id,
    at: answer.at,
    seconds: Math.min(LONGEST_ATTEMPT, Math.max(0, answer.at - round.shownAt) / 1000),
    marks: answer.marks,
    outOf: item.marks,
    typed: answer.typed,
    order: round.order,
    turned: round.turned.includes(item.id),
  };
}

/** The queue with a missed item put last; as it was on its second miss, or where too few others are left. */
function withReturn(round: Round, item: Item): Item[] {
  const isSecond = round.marked.some((before) => before.item.id === item.id);
  return isSecond || round.queue.length < ITEMS_BETWEEN ? round.queue : [...round.queue, item];
}

/** The round with its next item in hand, or ended. */
function shown(round: Round, at: number): Round {
  const [next, ...queue] = round.queue;
  if (next === undefined) return ended(round, 'empty');
  if (secondsLeft(round, at) === 0) return ended(round, 'time');
  return { ...round, current: next, queue, shownAt: at, uncoveredAt: null };
}

const ended = (round: Round, how: 'time' | 'empty' | 'stopped'): Round => ({
  ...round,
  current: null,
  uncoveredAt: null,
  ended: how,
});

/** The round with the time up to a moment counted. */
const clocked = (round: Round, at: number): Round => ({
  ...round,
  usedSeconds: round.usedSeconds + Math.max(0, at - round.lastAt) / 1000,
  lastAt: at,
});
