import { z } from 'zod';
import { Id, Millis } from './basics.ts';

/** What cleared an unclear mark: the student's words for it, the clip that explained it, or neither. */
export const Cleared = z.object({
  at: Millis,
  words: z.string().trim().max(2000),
  clipId: Id.nullable(),
});
export type Cleared = z.infer<typeof Cleared>;

/** Every time that an unclear mark was cleared, oldest first. */
export const AllCleared = z.array(Cleared).max(100);
