import type { RoundOrder } from '#lib/model/round-order.ts';
import type { Upcoming } from '#lib/model/next-up.ts';

/** What a round is begun with: it keeps its queue, though its own attempts change what gains most. */
export interface RoundPlan {
  courseId: string;
  minutes: number;
  order: RoundOrder;
  /** In the order in which they are asked. */
  queue: readonly Upcoming[];
  /** Ids of items that are asked from the answer's side. */
  turned: ReadonlySet<string>;
}

/** Whether a queue lasts for a round of so many minutes, by the time that its items are expected to take. */
export function lastsFor(queue: readonly Upcoming[], minutes: number): boolean {
  let seconds = 0;
  for (const { reason } of queue) seconds += reason.seconds;
  return seconds >= minutes * 60;
}
