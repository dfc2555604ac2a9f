import { z } from 'zod';
import { Day, Kept } from './basics.ts';

/** One subject with its syllabus and its exam. */
export const Course = Kept.extend({
  name: z.string().trim().min(1).max(200),
  /** The first day on which it is examined; null while the student does not know it. */
  examDay: Day.nullable(),
});
export type Course = z.infer<typeof Course>;
