import type { Item } from '#lib/model/item.ts';
import { type Recalled, type Written, chanceAt, memoryOf } from './memory.ts';
import { type DayOf, daysLacking, isSecured, recallsOf } from './secured.ts';
import type { StudyClock } from './study-time.ts';

/** From a calendar day on, the item was secured or no longer so. */
export interface Turn {
  day: string;
  isSecured: boolean;
}

/**
 * On which days an item came to be secured, and ceased to be: what held at the end of each day with an attempt, by what
 * is known today of when the course was studied.
 * @param attempts those at the item, in any order
 * @param aimOn the moment (epoch ms) for which the chance is taken, as seen from a moment
 */
export function securedTurns(
  item: Written & Pick<Item, 'kind'>,
  attempts: readonly Recalled[],
  { clock, dayOf, aimOn }: { clock: StudyClock; dayOf: DayOf; aimOn: (at: number) => number },
): Turn[] {
  // Most items are not there yet: nothing need be reckoned for them.
  if (daysLacking(recallsOf(attempts), dayOf) > 0) return [];
  const inOrder = attempts.toSorted((a, b) => a.at - b.at);
  const turns: Turn[] = [];
  let held = false;
  inOrder.forEach(({ at }, index) => {
    const day = dayOf(at);
    const next = inOrder[index + 1];
    if (next && dayOf(next.at) === day) return;
    const until = inOrder.slice(0, index + 1);
    const recalls = recallsOf(until);
    const holds =
      daysLacking(recalls, dayOf) === 0 &&
      isSecured(item, recalls, chanceAt(memoryOf(item, until, clock), clock, aimOn(at)), dayOf);
    if (holds !== held) turns.push({ day, isSecured: (held = holds) });
  });
  return turns;
}
