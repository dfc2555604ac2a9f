import { z } from 'zod';
import { Day, Id, Kept } from './basics.ts';

export const LessonKind = z.enum(['lesson', 'sheet', 'homework']);
export type LessonKind = z.infer<typeof LessonKind>;

/** A lesson, sheet or homework that a topic should have, and whether the student has it. */
export const Lesson = Kept.extend({
  courseId: Id,
  topicId: Id,
  kind: LessonKind,
  title: z.string().trim().min(1).max(300),
  /** The student has it. */
  held: z.boolean(),
  /** From whom it is to be had, in the student's words; empty where that is not known. */
  wantedFrom: z.string().trim().max(200),
  /** By when it is wanted; null where no day was set. */
  wantedBy: Day.nullable(),
});
export type Lesson = z.infer<typeof Lesson>;
