import { z } from 'zod';
import { Day, Kept } from './basics.ts';

/** One subject with its syllabus and its exam. */
export const Course = Kept.extend({
  name: z.string().trim().min(1).max(200),
  /** The first day on which it is examined; null while the student does not know it. */
  examDay: Day.nullable(),
  /** How many printed sides of A4 the condensed notes may take. */
  targetSides: z.number().int().min(1).max(100),
  /** How many questions the course should have. */
  targetQuestions: z.number().int().min(1).max(2000),
  /** What the notes are printed on: A4 of ISO 216, or US Letter. */
  paper: z.enum(['a4', 'letter']),
  columns: z.union([z.literal(1), z.literal(2)]),
});
export type Course = z.infer<typeof Course>;

/** What a course aims at until someone says otherwise. Common practice in teaching. */
export const FIRST_TARGETS = { targetSides: 8, targetQuestions: 100 } as const;

/** How notes are printed until someone says otherwise. */
export const FIRST_PRINT = { paper: 'a4', columns: 2 } as const;
