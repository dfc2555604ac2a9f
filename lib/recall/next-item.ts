import type { Id } from '#lib/model/basics.ts';
import type { Item } from '#lib/model/item.ts';
import { expectedSeconds } from './expected-seconds.ts';
import { inOrder, ItemQueue } from './item-queue.ts';
import type { ItemMemory } from './memory.ts';
import { momentsOf, outlook } from './outlook.ts';
import { finish, type Steps } from './steps.ts';
import type { StudyClock } from './study-time.ts';
import { PRACTICE_A_DAY, turnsLeft } from './turns.ts';

/** How far ahead practice looks where the exam's date is unknown or past, in days. Our choice. */
export const HORIZON_DAYS = 30;

/** Gains are in marks of an exam of this many. */
export const EXAM_MARKS = 100;

const DAY_MS = 86_400_000;

export interface Candidate {
  item: Item;
  memory: ItemMemory;
}

export interface RankInput {
  candidates: readonly Candidate[];
  /** Each topic's own share of the exam, 0 to 1; all 0 counts as even. Items of a topic not in it are left out. */
  shares: ReadonlyMap<Id, number>;
  clock: StudyClock;
  /** Epoch ms. */
  now: number;
  /** When the exam begins, epoch ms; null while the student does not know it. */
  examAt: number | null;
  /** Seconds of practice to be expected on each day; PRACTICE_A_DAY unless given. */
  secondsADay?: number;
}

/** The numbers behind a gain, for the sentence that explains it. */
export interface Why {
  /** Marks of an exam of EXAM_MARKS that the item stands for. */
  examMarks: number;
  /** Chance on exam day that practice now adds; below 0 where it is better left for the last turn. */
  chanceAdded: number;
  /** Expected length of the attempt. */
  seconds: number;
  /** Days to the moment it is practised for. */
  daysAhead: number;
  /** Whether that moment is the exam; else it is HORIZON_DAYS ahead. */
  isForExam: boolean;
  attempts: number;
  /** Days since the latest attempt, never negative; null before the first. */
  daysSince: number | null;
  /** What the time since it was last seen multiplies the gain by: 1 where no later turn is to be expected. */
  waited: number;
  /** Chance of a later turn, on the day before the exam at the latest, where it is asked now, and where it is not. */
  laterTurn: { ifAsked: number; ifLeft: number };
}

export interface Ranked {
  item: Item;
  /** What decides: marks of an exam of EXAM_MARKS that a second of practice now adds, times why.waited. */
  gain: number;
  chanceNow: number;
  /** Chance on exam day if it is left out now; later turns are counted as far as they are to be expected. */
  chanceExamNow: number;
  /** The same if it is asked now. */
  chanceExamAfter: number;
  why: Why;
}

/** The moment that practice aims at: the exam, or HORIZON_DAYS from now where it is unknown or past. Epoch ms. */
export function aimOf(now: number, examAt: number | null): number {
  return examAt !== null && examAt > now ? examAt : now + HORIZON_DAYS * DAY_MS;
}

/**
 * All items that may be asked, the one that gains most for the exam per second first; equal ones by id.
 *
 * gain = marks of the exam that the item stands for × chance on exam day that practice now adds / expected seconds
 *        × square root of the days since it was last seen (WAITING)
 *
 * A topic's share is spread over its items by their marks. The chance added is with and without practice now, and
 * each with the last turn before the exam as far as it is to be expected (turns.ts): what that turn does anyway is
 * no gain of practice now.
 */
export const rankItems = (input: RankInput): Ranked[] => finish(rankingOf(input));

/** The same bit by bit. */
export function* rankingOf(input: RankInput): Steps<Ranked[]> {
  const rank = rankerOf(input);
  const ranked: Ranked[] = [];
  for (const one of input.candidates) {
    if (input.shares.has(one.item.topicId)) ranked.push(rank(one));
    yield;
  }
  return ranked.sort(inOrder);
}

/**
 * The next n items, best first but with topics mixed (ItemQueue). No item comes twice.
 * @param ranked as rankItems gives them
 */
export function nextItems(ranked: readonly Ranked[], n: number): Ranked[] {
  const queue = new ItemQueue(ranked);
  const chosen: Ranked[] = [];
  for (let one = queue.next(); one && chosen.length < n; one = queue.next()) chosen.push(one);
  return chosen;
}

/**
 * How strongly waiting counts: practice gains by the time since the last one, and more than the model says under
 * other laws of forgetting. Our choice, made by simulation under laws that are not reported (docs/method.md).
 */
const WAITING = 0.5;

/** Nothing was seen less long ago than this, in days: one minute. */
const LEAST_WAIT = 1 / 1440;

/**
 * What ranks single items among those of the input, as an item is anew when an attempt at it was made: what all
 * share is worked out once. An item of a topic without a share stands for no marks.
 */
export function rankerOf(input: RankInput): (one: Candidate, now?: number) => Ranked {
  const { clock, examAt, shares } = input;
  const asked = input.candidates.filter(({ item }) => shares.has(item.topicId));
  const perMark = examMarksPerMark(asked, shares);
  let secondsForAll = 0;
  for (const { item, memory } of asked) secondsForAll += expectedSeconds(item, memory.medianSeconds);
  const sharedAt = (now: number) => {
    const aim = aimOf(now, examAt);
    const turns = turnsLeft(now, aim, input.secondsADay ?? PRACTICE_A_DAY, secondsForAll);
    return { aim, turns, moments: momentsOf(clock, { now, last: turns.lastAt, aim }) };
  };
  const shared = sharedAt(input.now);
  return ({ item, memory }, now = input.now) => {
    const { aim, turns, moments } = now === input.now ? shared : sharedAt(now);
    const { ifAsked, ifLeft } = turns;
    const examMarks = (perMark.get(item.topicId) ?? 0) * item.marks;
    const chances = outlook(memory, moments);
    const left = chances.ifNone + ifLeft * (chances.ifLast - chances.ifNone);
    const done = chances.ifNow + ifAsked * (chances.ifBoth - chances.ifNow);
    const seconds = expectedSeconds(item, memory.medianSeconds);
    const waited = Math.max(LEAST_WAIT, (now - memory.at.at(-1)!) / DAY_MS) ** (WAITING * ifAsked);
    return {
      item,
      gain: ((examMarks * (done - left)) / seconds) * waited,
      chanceNow: chances.now,
      chanceExamNow: left,
      chanceExamAfter: done,
      why: {
        examMarks,
        chanceAdded: done - left,
        seconds,
        daysAhead: (aim - now) / DAY_MS,
        isForExam: aim === examAt,
        attempts: memory.attempts,
        daysSince: memory.lastAt === null ? null : Math.max(0, now - memory.lastAt) / DAY_MS,
        waited,
        laterTurn: { ifAsked, ifLeft },
      },
    };
  };
}

/** By topic: the marks of the exam that one mark of an item stands for. */
function examMarksPerMark(asked: readonly Candidate[], shares: ReadonlyMap<Id, number>): Map<Id, number> {
  const marks = new Map<Id, number>();
  for (const { item } of asked) marks.set(item.topicId, (marks.get(item.topicId) ?? 0) + item.marks);
  const isEven = [...shares.values()].every((share) => share === 0);
  const shareOf = (topic: Id): number => (isEven ? 1 / shares.size : (shares.get(topic) ?? 0));
  return new Map([...marks].map(([topic, sum]) => [topic, (EXAM_MARKS * shareOf(topic)) / sum]));
}
