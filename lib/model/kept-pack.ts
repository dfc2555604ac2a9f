import { z } from 'zod';
import { Id, Millis } from './basics.ts';

/**
 * The course pack that a course came from or was saved as, whole: an update is compared with it, and parts that this
 * version does not know are handed on with it.
 */
export const KeptPack = z.object({
  courseId: Id,
  /** When it was taken in or saved. */
  at: Millis,
  /** Checked by lib/exchange/course-pack.ts where it is used: the format is not the model's. */
  pack: z.unknown(),
});
export type KeptPack = z.infer<typeof KeptPack>;
