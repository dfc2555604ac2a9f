import { z } from 'zod';
import { Id, Kept } from './basics.ts';
import { Lettering } from './lettering.ts';
import { MarkCount } from './mark-count.ts';

/** The most parts of one paper: some five times a long one. */
export const MOST_PARTS = 300;

/** The longest number of a part, such as "3 (b) (ii)". */
export const LONGEST_NUMBER = 40;

/** One marked part of a paper. */
export const PaperPart = z.object({
  id: Id,
  /** As it is printed, such as "3 (b) (ii)"; empty where it has none. */
  number: z.string().trim().max(LONGEST_NUMBER),
  /** What it is out of; 0 where nobody has said yet. */
  marks: MarkCount,
  topicIds: z.array(Id).max(20),
  /** What it asks; may be empty, as the paper itself may lie on the table. */
  asks: Lettering,
  /** Its piece of the mark scheme, kept covered until it is marked. */
  scheme: Lettering,
  /** The part of an earlier paper that it is; null where it is new. */
  takenFrom: z.object({ paperId: Id, partId: Id }).nullable(),
});
export type PaperPart = z.infer<typeof PaperPart>;

/** The fewest marks of a paper that a grade takes. */
export const Boundary = z.object({ grade: z.string().trim().min(1).max(20), marks: MarkCount });
export type Boundary = z.infer<typeof Boundary>;

const isUnique = (values: readonly string[]): boolean => new Set(values).size === values.length;

/** An exam paper made of marked parts. */
export const Paper = Kept.extend({
  courseId: Id,
  title: z.string().trim().min(1).max(300),
  /** Where it is from, in the student's words; empty where that was not said. */
  from: z.string().trim().max(300),
  /** How long it is meant to take, without extra time. */
  minutes: z.number().int().min(1).max(600),
  /** The total that is printed on it; null where none is. The parts may add up to another one. */
  printedTotal: MarkCount.positive().nullable(),
  /** In the order of the paper. */
  parts: z
    .array(PaperPart)
    .max(MOST_PARTS)
    .refine((parts) => isUnique(parts.map(({ id }) => id)), { message: 'twice' }),
  /** A mark scheme for the paper as a whole, kept covered. */
  scheme: Lettering,
  /** Where the student entered them; empty otherwise. */
  boundaries: z
    .array(Boundary)
    .max(20)
    .refine((all) => isUnique(all.map(({ grade }) => grade)), { message: 'twice' }),
});
export type Paper = z.infer<typeof Paper>;

/** What nobody has said of a part when it is entered. */
export const NEW_PART: Pick<PaperPart, 'topicIds' | 'asks' | 'scheme' | 'takenFrom'> = {
  topicIds: [],
  asks: { text: '', pictureIds: [] },
  scheme: { text: '', pictureIds: [] },
  takenFrom: null,
};
