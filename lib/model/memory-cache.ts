import { z } from 'zod';
import { Id } from './basics.ts';

/** A cache: the memories of a course's items, packed (lib/recall/packed-memory.ts). Can be thrown away. */
export const MemoryCache = z.object({
  courseId: Id,
  /** Checked where it is unpacked: the shape is lib/recall's. */
  packed: z.unknown(),
});
export type MemoryCache = z.infer<typeof MemoryCache>;
