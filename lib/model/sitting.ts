import { z } from 'zod';
import { Id, Millis } from './basics.ts';
import { LONGEST_LETTERING } from './lettering.ts';

/**
 * The start of a timed attempt at a paper. An append-only fact: what happens later are SittingEvents. Its clock is
 * worked out from these moments, and so stands through reload, crash, sleep and a closed window.
 */
export const Sitting = z.object({
  id: Id,
  courseId: Id,
  paperId: Id,
  startedAt: Millis,
  /** The paper's minutes at the time, without extra time. */
  minutes: z.number().int().min(1).max(600),
  /** Extra time of an access arrangement, in per cent of the minutes. */
  extraPercent: z.number().min(0).max(300),
  /** Supervised rest breaks of an access arrangement: while one runs, the clock stands still. */
  restBreaks: z.boolean(),
  answers: z.enum(['onPaper', 'typed']),
});
export type Sitting = z.infer<typeof Sitting>;

const event = <Kind extends string>(kind: Kind) =>
  z.object({ id: Id, sittingId: Id, at: Millis, kind: z.literal(kind) });

/**
 * Something that happened in a sitting. An append-only fact. Its moment is that of lib/papers/steady-time.ts, which a
 * system clock that is set back does not turn back.
 */
export const SittingEvent = z.discriminatedUnion('kind', [
  event('restBegan'),
  event('restEnded'),
  /** The student left the page: a break in conditions. */
  event('left'),
  event('returned'),
  /** The student turned to a part: from here its time runs. */
  event('turnedTo').extend({ partId: Id }),
  event('ended'),
]);
export type SittingEvent = z.infer<typeof SittingEvent>;

/** What the student typed for a part. It changes until the sitting ends, and never after. */
export const TypedAnswer = z.object({
  id: Id,
  sittingId: Id,
  partId: Id,
  text: z.string().max(LONGEST_LETTERING),
  changedAt: Millis,
});
export type TypedAnswer = z.infer<typeof TypedAnswer>;
