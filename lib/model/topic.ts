import { z } from 'zod';
import { Id, Kept } from './basics.ts';

/** A node of the syllabus tree. */
export const Topic = Kept.extend({
  courseId: Id,
  /** The topic above it; null at the top of the tree. */
  parentId: Id.nullable(),
  /** Its place among all topics of the course, in reading order. */
  order: z.number().int().nonnegative(),
  /** The syllabus's own numbering, such as "2.1"; empty where it has none. */
  code: z.string().max(40),
  title: z.string().trim().min(1).max(500),
  /** Weight within the exam, relative to its siblings; null means even. */
  share: z.number().nonnegative().nullable(),
  /** Dropped by a newer syllabus, or an option the student does not sit: kept, but nothing is asked of it. */
  off: z.boolean(),
});
export type Topic = z.infer<typeof Topic>;

/** One assessable point of a topic ("can state ..."). */
export const Statement = Kept.extend({
  courseId: Id,
  topicId: Id,
  order: z.number().int().nonnegative(),
  code: z.string().max(40),
  text: z.string().trim().min(1).max(2000),
});
export type Statement = z.infer<typeof Statement>;
