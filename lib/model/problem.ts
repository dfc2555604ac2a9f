import { z } from 'zod';
import { Id, Kept } from './basics.ts';
import { hasLettering, Lettering } from './lettering.ts';
import { MarkCount } from './mark-count.ts';

/** Why a problem is to be redone without notes. */
export const StarReason = z.enum(['hardForMe', 'important']);
export type StarReason = z.infer<typeof StarReason>;

/** An assignment or problem-sheet item. */
export const Problem = Kept.extend({
  courseId: Id,
  title: z.string().trim().min(1).max(300),
  /** Where it is from, in the student's words, such as "Sheet 3, problem 2"; empty where that was not said. */
  from: z.string().trim().max(300),
  topicIds: z.array(Id).max(20),
  /** What it is out of. */
  marks: MarkCount.positive(),
  /** What it asks. */
  statement: Lettering.refine(hasLettering, { message: 'empty' }),
  /** Its solution, kept covered until the student has tried; empty where there is none yet. */
  solution: Lettering,
  /** Null where it is not starred. */
  star: StarReason.nullable(),
});
export type Problem = z.infer<typeof Problem>;
