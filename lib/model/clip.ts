import { z } from 'zod';
import { Id, Kept } from './basics.ts';
import { Selector } from './selector.ts';

/** The longest passage that is kept, in characters of plain text: about forty pages. */
export const LONGEST_PASSAGE = 100_000;

/** The longest sanitised HTML of a passage. Maths takes many tags for few characters. */
export const LONGEST_PASSAGE_HTML = 1_500_000;

export const Passage = z.object({
  /** Plain text; a formula stands in it once, as TeX between \( \) or, where none is known, as its characters. */
  text: z.string().trim().min(1).max(LONGEST_PASSAGE),
  /** Sanitised HTML from the allow-list in lib/capture. */
  html: z.string().min(1).max(LONGEST_PASSAGE_HTML),
});
export type Passage = z.infer<typeof Passage>;

/** A passage kept from a source, with the student's own words beside it. */
export const Clip = Kept.extend({
  courseId: Id,
  sourceId: Id,
  topicIds: z.array(Id).max(20),
  ...Passage.shape,
  ownWords: z.string().max(20_000),
  /** The student must return to it. */
  unclear: z.boolean(),
  /** Headings above the passage, nearest first: they help to match it to a topic. */
  headings: z.array(z.string().max(500)).max(8),
  selectors: z.array(Selector).min(1).max(4),
});
export type Clip = z.infer<typeof Clip>;
