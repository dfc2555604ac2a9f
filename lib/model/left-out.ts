import { z } from 'zod';

/** Why something is left out of the condensed notes without being lost; null where it is in them. */
export const LeftOut = z.enum(['known', 'offSyllabus']).nullable();
export type LeftOut = z.infer<typeof LeftOut>;
