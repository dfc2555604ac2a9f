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
  /** The id of the course in the pack's own file: another one where a course was begun without the pack. */
  packCourseId: Id,
  /** Ids of the file, each with the id that the same thing has in this deck, where they differ. */
  ids: z.record(Id, Id),
  /** In the ids of this deck. Checked by lib/exchange/course-pack.ts where it is used: the format is not the model's. */
  pack: z.unknown(),
});
export type KeptPack = z.infer<typeof KeptPack>;
