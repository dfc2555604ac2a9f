import { type Attempt } from '#lib/model/attempt.ts';
import { type Item, isAsked, itemOfLine, itemOfQuestion } from '#lib/model/item.ts';
import { type CourseMemory, courseMemoryOf, type WrittenAt } from '#lib/recall/course-memory.ts';
import { type ItemMemory, chanceAt, memoryOf, withAttempt } from '#lib/recall/memory.ts';
import { type RankInput, type Ranked, aimOf, rankerOf, rankingOf } from '#lib/recall/next-item.ts';
import { isSecured } from '#lib/recall/secured.ts';
import { finish, type Steps } from '#lib/recall/steps.ts';
import type { GrowingClock } from '#lib/recall/study-time.ts';
import type { BriefDeck, CourseDeck } from '#lib/store/course-deck.ts';
import { type Coverage, coverageOf } from '#lib/syllabus/coverage.ts';
import { examShares } from '#lib/syllabus/tree.ts';
import { dayOf, examMoment } from './days.ts';
import { sharesForItems } from './shares.ts';

/** What follows from the memory of a course at a moment. Nothing of it is stored as truth. */
export interface BriefProgress {
  items: Map<string, Item>;
  memories: Map<string, ItemMemory>;
  clock: GrowingClock;
  secured: Set<string>;
  /** Items that were tried. */
  attempted: Set<string>;
}

/** The same with the attempts themselves. */
export interface Progress extends BriefProgress {
  /** The attempts at each item. */
  attempts: Map<string, Attempt[]>;
  /** Ids of all attempts that are in it. */
  counted: Set<string>;
}

/** When an item of the deck was written, lines that are not asked among them. */
export function writtenIn({ questions, lines }: Pick<BriefDeck, 'questions' | 'lines'>): WrittenAt {
  const written = new Map([...questions, ...lines].map(({ id, createdAt }) => [id, createdAt]));
  return (id) => written.get(id);
}

/** The memory of every item, and which items are secured. `now` in epoch ms. */
export function* briefProgressOf(
  deck: BriefDeck,
  { memories: tried, clock }: CourseMemory,
  now: number,
): Steps<BriefProgress> {
  const aim = aimOf(now, examMoment(deck.course.examDay));
  const items = new Map<string, Item>();
  const memories = new Map<string, ItemMemory>();
  const secured = new Set<string>();
  const attempted = new Set<string>();
  const add = (item: Item, createdAt: number) => {
    const memory = tried.get(item.id) ?? memoryOf({ createdAt }, [], clock);
    items.set(item.id, item);
    memories.set(item.id, memory);
    if (memory.attempts > 0) attempted.add(item.id);
    if (isSecured(item, memory, chanceAt(memory, clock, aim), dayOf)) secured.add(item.id);
  };
  for (const question of deck.questions) {
    add(itemOfQuestion(question), question.createdAt);
    yield;
  }
  for (const line of deck.lines) {
    if (isAsked(line)) add(itemOfLine(line), line.createdAt);
    yield;
  }
  return { items, memories, clock, secured, attempted };
}

/** The same from the attempts themselves. `now` in epoch ms. */
export function progressOf(deck: CourseDeck, now: number): Progress {
  const course = finish(courseMemoryOf(deck.attempts, writtenIn(deck)));
  const attempts = Map.groupBy(deck.attempts, (attempt) => attempt.itemId);
  const counted = new Set(deck.attempts.map(({ id }) => id));
  return { ...finish(briefProgressOf(deck, course, now)), attempts, counted };
}

/**
 * The progress after one more attempt: the same as from scratch, save that the items not tried keep what was said of
 * them at an earlier moment. What is large is changed in place, so the progress before must not be used any more. Null,
 * and nothing changed, where the attempt is dated before another one.
 */
export function progressAfter(
  deck: CourseDeck,
  progress: Progress,
  attempt: Attempt,
  now: number,
): Progress | null {
  const { memories, clock } = progress;
  const { itemId, at } = attempt;
  const before = memories.get(itemId);
  const memory = before && withAttempt(before, attempt, clock);
  if ((before && !memory) || !clock.add(at)) return null;
  const secured = new Set(progress.secured);
  const attempted = new Set(progress.attempted);
  const attempts = [...(progress.attempts.get(itemId) ?? []), attempt];
  progress.attempts.set(itemId, attempts);
  progress.counted.add(attempt.id);
  const item = progress.items.get(itemId);
  if (memory && item) {
    memories.set(itemId, memory);
    attempted.add(itemId);
    const aim = aimOf(now, examMoment(deck.course.examDay));
    if (isSecured(item, memory, chanceAt(memory, clock, aim), dayOf)) secured.add(itemId);
    else secured.delete(itemId);
  }
  return { ...progress, secured, attempted };
}

function rankInput(deck: BriefDeck, progress: BriefProgress, now: number): RankInput {
  const candidates = [...progress.items.values()].map((item) => ({
    item,
    memory: progress.memories.get(item.id)!,
  }));
  const shares = sharesForItems(deck.topics, examShares(deck.topics));
  return { candidates, shares, clock: progress.clock, now, examAt: examMoment(deck.course.examDay) };
}

/** All items of the course that may be asked, the one that gains most now first. */
export const rankDeck = (deck: BriefDeck, progress: BriefProgress, now: number): Ranked[] =>
  finish(rankSteps(deck, progress, now));

/** The same bit by bit. */
export const rankSteps = (deck: BriefDeck, progress: BriefProgress, now: number): Steps<Ranked[]> =>
  rankingOf(rankInput(deck, progress, now));

/** The order with one item at its new place. */
export function rankedAfter(
  ranked: readonly Ranked[],
  { deck, progress }: { deck: BriefDeck; progress: BriefProgress },
  itemId: string,
  now: number,
): Ranked[] {
  const others = ranked.filter(({ item }) => item.id !== itemId);
  const [item, memory] = [progress.items.get(itemId), progress.memories.get(itemId)];
  if (!item || !memory || others.length === ranked.length) return others;
  const one = rankerOf(rankInput(deck, progress, now))({ item, memory });
  const place = others.findIndex(({ gain }) => gain < one.gain);
  return others.toSpliced(place < 0 ? others.length : place, 0, one);
}

/** What evidence each topic has, and its gaps, worst first. */
export function coverDeck(deck: BriefDeck, { secured, attempted }: BriefProgress): Coverage {
  const { topics, statements, clips, questions, lessons } = deck;
  const lines = deck.lines.filter(isAsked);
  return coverageOf({ topics, statements, clips, questions, lines, lessons, secured, attempted });
}
