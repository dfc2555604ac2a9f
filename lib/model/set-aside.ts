import { z } from 'zod';
import { Millis } from './basics.ts';

/** A row taken out of the deck without losing it: it could not be read, or the student deleted it. */
export const SetAside = z.object({
  store: z.string(),
  /** The row as it was found, whatever it is. */
  row: z.unknown(),
  why: z.enum(['unreadable', 'deleted']),
  /** What was wrong with it; empty when it was deleted. */
  problem: z.string(),
  at: Millis,
});
export type SetAside = z.infer<typeof SetAside>;
