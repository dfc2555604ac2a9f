import { z } from 'zod';
import { Id, Millis } from './basics.ts';
import { MarkCount, withinMarks } from './mark-count.ts';

/** Why marks were lost: not known, a wrong way, a question misread, a slip, or no time left. */
export const LOST_BECAUSE = ['knowledge', 'method', 'misread', 'slip', 'time'] as const;
export const LostBecause = z.enum(LOST_BECAUSE);
export type LostBecause = z.infer<typeof LostBecause>;

/** Who marked. */
export const Marker = z.object({
  /** The student marked their own work. */
  isStudent: z.boolean(),
  /** As they call themselves; empty where they did not say. */
  name: z.string().trim().max(200),
});
export type Marker = z.infer<typeof Marker>;

const lostIn = (mark: { lost: readonly { marks: number }[] }): number =>
  mark.lost.reduce((sum, { marks }) => sum + marks, 0);

/**
 * How one part of a sitting was marked. An append-only fact: whoever changes a mark writes another that names those it
 * takes the place of, so that nothing is overwritten unseen.
 */
export const Mark = z
  .object({
    id: Id,
    sittingId: Id,
    partId: Id,
    at: Millis,
    by: Marker,
    /** Null takes the marking back: the part is unmarked again. */
    marks: MarkCount.nullable(),
    outOf: MarkCount,
    /** Remarks on method, for the student. */
    remark: z.string().trim().max(4000),
    /** What the lost marks were lost by, each cause once. What is left over was lost for no reason that was given. */
    lost: z
      .array(z.object({ because: LostBecause, marks: MarkCount.positive() }))
      .max(LOST_BECAUSE.length)
      .refine((all) => new Set(all.map(({ because }) => because)).size === all.length, { message: 'twice' }),
    /** Ids of the marks that whoever marked saw and replaced. */
    replaces: z.array(Id).max(100),
  })
  .refine(withinMarks, { message: 'more marks than there are' })
  .refine((mark) => lostIn(mark) <= (mark.marks === null ? 0 : mark.outOf - mark.marks), {
    message: 'more lost than is missing',
    path: ['lost'],
  })
  .refine(({ id, replaces }) => !replaces.includes(id), { message: 'replaces itself', path: ['replaces'] });
export type Mark = z.infer<typeof Mark>;
