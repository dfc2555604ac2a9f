import { z } from 'zod';
import { Id, Millis } from './basics.ts';
import { ItemKind } from './item.ts';

/** A cache: what gains most now in a course, best first, so that the popup can open on it. Can be thrown away. */
export const NextUp = z.object({
  courseId: Id,
  at: Millis,
  items: z.array(z.object({ kind: ItemKind, id: Id })).max(60),
});
export type NextUp = z.infer<typeof NextUp>;
