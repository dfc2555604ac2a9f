import type { Id } from '#lib/model/basics.ts';
import type { Item } from '#lib/model/item.ts';
import { expectedSeconds } from './expected-seconds.ts';
import { forecast, type ItemMemory } from './memory.ts';
import type { StudyClock } from './study-time.ts';

/** How far ahead practice looks where the exam's date is unknown or past, in days. Our choice. */
export const HORIZON_DAYS = 30;

/** Gains are in marks of an exam of this many. */
export const EXAM_MARKS = 100;

/** Another topic's item may go first where it has at least this part of the gain. Our choice. */
export const SWITCH_RATIO = 0.5;

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
}

/** The numbers behind a gain, for the sentence that explains it. */
export interface Why {
  /** Marks of an exam of EXAM_MARKS that the item stands for. */
  examMarks: number;
  /** Chance that practice now adds on exam day. */
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
}

export interface Ranked {
  item: Item;
  /** Marks of an exam of EXAM_MARKS to be expected from a second of practice now. */
  gain: number;
  chanceNow: number;
  /** Chance on exam day if it is not practised again. */
  chanceExamNow: number;
  /** Chance on exam day if it is practised once, now. */
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
 * gain = marks of the exam that the item stands for × chance that practice now adds on exam day / expected seconds.
 * A topic's share is spread over its items by their marks. Practice between now and the exam is not foreseen.
 */
export function rankItems(input: RankInput): Ranked[] {
  const asked = input.candidates.filter(({ item }) => input.shares.has(item.topicId));
  const perMark = examMarksPerMark(asked, input.shares);
  return asked
    .map((one) => rankOne(one, (perMark.get(one.item.topicId) ?? 0) * one.item.marks, input))
    .sort((a, b) => b.gain - a.gain || (a.item.id < b.item.id ? -1 : 1));
}

/**
 * The next n items, best first but with topics mixed: no two of a topic in a row where an item of another has at
 * least SWITCH_RATIO of the gain. No item comes twice.
 * @param ranked as rankItems gives them
 */
export function nextItems(ranked: readonly Ranked[], n: number): Ranked[] {
  const left = [...new Map(ranked.map((one) => [one.item.id, one])).values()];
  const chosen: Ranked[] = [];
  while (chosen.length < n && left.length > 0) {
    chosen.push(...left.splice(nextIndex(left, chosen.at(-1)?.item.topicId), 1));
  }
  return chosen;
}

function nextIndex(left: readonly Ranked[], lastTopic: Id | undefined): number {
  const enough = (left[0]?.gain ?? 0) * SWITCH_RATIO;
  for (const [i, one] of left.entries()) {
    if (one.gain < enough) break;
    if (one.item.topicId !== lastTopic) return i;
  }
  return 0;
}

function rankOne({ item, memory }: Candidate, examMarks: number, input: RankInput): Ranked {
  const { clock, now, examAt } = input;
  const aim = aimOf(now, examAt);
  const { chanceNow, without, withOne } = forecast(memory, clock, now, aim);
  const seconds = expectedSeconds(item, memory.medianSeconds);
  const chanceAdded = withOne - without;
  return {
    item,
    gain: (examMarks * chanceAdded) / seconds,
    chanceNow,
    chanceExamNow: without,
    chanceExamAfter: withOne,
    why: {
      examMarks,
      chanceAdded,
      seconds,
      daysAhead: (aim - now) / DAY_MS,
      isForExam: aim === examAt,
      attempts: memory.attempts,
      daysSince: memory.lastAt === null ? null : Math.max(0, now - memory.lastAt) / DAY_MS,
    },
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
