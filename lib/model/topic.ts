import { z } from 'zod';
import { Id, Kept } from './basics.ts';
import { AllCleared } from './cleared.ts';

/** What a share is given in. Parts say only how siblings compare. */
export const ShareUnit = z.enum(['percent', 'marks', 'hours', 'parts']);
export type ShareUnit = z.infer<typeof ShareUnit>;

/** The tier or option that something belongs to, such as "Higher tier"; empty where it is for everyone. */
const Group = z.string().max(60);

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
  unit: ShareUnit,
  group: Group,
  /** Dropped, or a tier or option that the student does not sit: kept, but nothing is asked of it. */
  off: z.boolean(),
  /** A newer version of the syllabus has it no longer. What is dropped is off. */
  dropped: z.boolean(),
  /** The student must return to it. */
  unclear: z.boolean(),
  cleared: AllCleared,
});
export type Topic = z.infer<typeof Topic>;

/** What the student has not said anything of yet. */
export const NEW_TOPIC: Pick<Topic, 'dropped' | 'unclear' | 'cleared'> = {
  dropped: false,
  unclear: false,
  cleared: [],
};

/** The statements of the syllabus that something answers. One that is gone counts for nothing. */
export const StatementIds = z.array(Id).max(200);

/** One assessable point of a topic ("can state ..."). */
export const Statement = Kept.extend({
  courseId: Id,
  topicId: Id,
  order: z.number().int().nonnegative(),
  code: z.string().max(40),
  text: z.string().trim().min(1).max(2000),
  group: Group,
  /** Of a tier or option that the student does not sit: kept, but not asked. */
  off: z.boolean(),
});
export type Statement = z.infer<typeof Statement>;
