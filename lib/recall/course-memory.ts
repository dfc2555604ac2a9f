import type { Id } from '#lib/model/basics.ts';
import { type ItemMemory, memoryOf, type Recalled, withAttempt } from './memory.ts';
import type { Steps } from './steps.ts';
import { type GrowingClock, studyClock } from './study-time.ts';

/** What follows from the attempts of a course, as far as memory goes. */
export interface CourseMemory {
  /** Of the items that were tried. */
  memories: Map<Id, ItemMemory>;
  /** Items that were tried and were not in the deck: nothing is known of when they were written. */
  gone: Set<Id>;
  clock: GrowingClock;
}

/** An attempt at one of many items. */
export type RecalledItem = Recalled & { itemId: Id };

/** When an item was written, epoch ms; undefined where it is not in the deck. */
export type WrittenAt = (id: Id) => number | undefined;

/** Works it out from attempts in any order. */
export function* courseMemoryOf(
  attempts: readonly RecalledItem[],
  writtenAt: WrittenAt,
): Steps<CourseMemory> {
  const clock = studyClock(attempts.map(({ at }) => at));
  const course: CourseMemory = { memories: new Map(), gone: new Set(), clock };
  const byItem = new Map<Id, RecalledItem[]>();
  for (const attempt of attempts) {
    const others = byItem.get(attempt.itemId);
    if (others) others.push(attempt);
    else byItem.set(attempt.itemId, [attempt]);
    yield;
  }
  for (const [id, theirs] of byItem) {
    tried(course, id, theirs, writtenAt);
    yield;
  }
  return course;
}

function tried(
  { memories, gone, clock }: CourseMemory,
  id: Id,
  attempts: readonly Recalled[],
  writtenAt: WrittenAt,
): void {
  const createdAt = writtenAt(id);
  if (createdAt === undefined) gone.add(id);
  else memories.set(id, memoryOf({ createdAt }, attempts, clock));
}

/** Whether it still goes with the deck: no item came back, and none was written at another time. */
export function fitsDeck({ memories, gone }: CourseMemory, writtenAt: WrittenAt): boolean {
  for (const id of gone) if (writtenAt(id) !== undefined) return false;
  for (const [id, { at }] of memories) {
    const createdAt = writtenAt(id);
    if (createdAt !== undefined && Math.min(createdAt, at[1]!) !== at[0]) return false;
  }
  return true;
}

/**
 * Counts in further attempts, in place: the same as worked out from scratch. False where that cannot be done: an
 * attempt is dated no later than one that is counted, or two at one item have the same moment. It must not be used any
 * more then.
 * @param newer oldest first
 */
export function* addNewer(
  course: CourseMemory,
  newer: readonly RecalledItem[],
  writtenAt: WrittenAt,
): Steps<boolean> {
  const { memories, gone, clock } = course;
  const latest = clock.moments().at(-1) ?? -Infinity;
  if (newer[0] && newer[0].at <= latest) return false;
  if (!newer.every(({ at }) => clock.add(at))) return false;
  for (const [id, theirs] of Map.groupBy(newer, ({ itemId }) => itemId)) {
    let memory = memories.get(id) ?? null;
    yield;
    if (!memory) {
      if (!gone.has(id)) tried(course, id, theirs, writtenAt);
      continue;
    }
    for (const attempt of theirs) if (memory) memory = withAttempt(memory, attempt, clock);
    if (!memory) return false;
    memories.set(id, memory);
  }
  return true;
}
