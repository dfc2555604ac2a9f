import { type Attempt } from '#lib/model/attempt.ts';
import { type Item, itemOfLine, itemOfQuestion } from '#lib/model/item.ts';
import { type ItemMemory, chanceAt, memoryOf } from '#lib/recall/memory.ts';
import { type Ranked, aimOf, rankItems } from '#lib/recall/next-item.ts';
import { isSecured } from '#lib/recall/secured.ts';
import { type StudyClock, studyClock } from '#lib/recall/study-time.ts';
import type { CourseDeck } from '#lib/store/course-deck.ts';
import { type Coverage, coverageOf } from '#lib/syllabus/coverage.ts';
import { examShares } from '#lib/syllabus/tree.ts';
import { dayOf, examMoment } from './days.ts';
import { sharesForItems } from './shares.ts';

/** What follows from a course's deck at a moment. Nothing of it is stored as truth. */
export interface Progress {
  items: Map<string, Item>;
  memories: Map<string, ItemMemory>;
  clock: StudyClock;
  secured: Set<string>;
  attempted: Set<string>;
}

/** Memory of every item from the attempts, and which items are secured. `now` in epoch ms. */
export function progressOf(deck: CourseDeck, now: number): Progress {
  const clock = studyClock(deck.attempts.map((attempt) => attempt.at));
  const byItem = Map.groupBy(deck.attempts, (attempt) => attempt.itemId);
  const aim = aimOf(now, examMoment(deck.course.examDay));
  const items = new Map<string, Item>();
  const memories = new Map<string, ItemMemory>();
  const secured = new Set<string>();
  const add = (item: Item, createdAt: number) => {
    const attempts: Attempt[] = byItem.get(item.id) ?? [];
    const memory = memoryOf({ createdAt }, attempts, clock);
    items.set(item.id, item);
    memories.set(item.id, memory);
    if (attempts.length > 0 && isSecured(attempts, chanceAt(memory, clock, aim), dayOf)) secured.add(item.id);
  };
  for (const question of deck.questions) add(itemOfQuestion(question), question.createdAt);
  for (const line of deck.lines) add(itemOfLine(line), line.createdAt);
  return { items, memories, clock, secured, attempted: new Set(byItem.keys()) };
}

/** All items of the course that may be asked, the one that gains most now first. */
export function rankDeck(deck: CourseDeck, progress: Progress, now: number): Ranked[] {
  const candidates = [...progress.items.values()].map((item) => ({
    item,
    memory: progress.memories.get(item.id)!,
  }));
  const shares = sharesForItems(deck.topics, examShares(deck.topics));
  const examAt = examMoment(deck.course.examDay);
  return rankItems({ candidates, shares, clock: progress.clock, now, examAt });
}

/** What evidence each topic has, and its gaps, worst first. */
export function coverDeck(deck: CourseDeck, { secured, attempted }: Progress): Coverage {
  const { topics, statements, clips, questions, lines } = deck;
  return coverageOf({ topics, statements, clips, questions, lines, secured, attempted });
}
