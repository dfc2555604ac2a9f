import { z } from 'zod';
import { Id, Kept } from './basics.ts';
import { AllCleared } from './cleared.ts';
import { LeftOut } from './left-out.ts';
import { Selector } from './selector.ts';
import { StatementIds } from './topic.ts';

/** The longest passage that is kept, in characters of plain text: about forty pages. */
export const LONGEST_PASSAGE = 100_000;

/** The longest sanitised HTML of a passage. Maths takes many tags for few characters. */
export const LONGEST_PASSAGE_HTML = 1_500_000;

export const Passage = z.object({
  /**
   * Plain text; a formula stands in it once, as TeX between \( \) or, where none is known, as its characters. Of a
   * picture, its caption or alternative text. Empty only beside pictures.
   */
  text: z.string().trim().max(LONGEST_PASSAGE),
  /** Sanitised HTML from the allow-list in lib/capture. `<img data-picture="0">` is the first of the clip's pictures. */
  html: z.string().max(LONGEST_PASSAGE_HTML),
});
export type Passage = z.infer<typeof Passage>;

const isSomething = (clip: { text: string; pictureIds: string[] }): boolean =>
  clip.text !== '' || clip.pictureIds.length > 0;

export const ClipFields = Kept.extend({
  courseId: Id,
  sourceId: Id,
  topicIds: z.array(Id).max(20),
  /** What it explains. */
  statementIds: StatementIds,
  ...Passage.shape,
  ownWords: z.string().max(20_000),
  /** The student must return to it. */
  unclear: z.boolean(),
  /** Headings above the passage, nearest first: they help to match it to a topic. */
  headings: z.array(z.string().max(500)).max(8),
  selectors: z.array(Selector).max(5),
  /** Pictures of the clip, in their order. */
  pictureIds: z.array(Id).max(20),
  leftOut: LeftOut,
  cleared: AllCleared,
});

/** A passage or picture kept from a source, with the student's own words beside it. */
export const Clip = ClipFields.refine(isSomething, { message: 'empty' });
export type Clip = z.infer<typeof Clip>;

/** What nobody has said of a clip when it is kept. */
export const NEW_CLIP: Pick<Clip, 'statementIds' | 'leftOut' | 'cleared'> = {
  statementIds: [],
  leftOut: null,
  cleared: [],
};
