import { z } from 'zod';
import { Id } from './basics.ts';
import { ClipFields, Passage } from './clip.ts';
import { PictureDraft } from './picture.ts';
import type { Selector } from './selector.ts';
import { Source } from './source.ts';
import { WISHES } from './wish.ts';

/** The page as a content script reads it. */
const Page = Source.pick({
  kind: true,
  url: true,
  title: true,
  site: true,
  author: true,
  published: true,
  licence: true,
});

/** What the student decides about a clip on the slip. */
const Decision = ClipFields.pick({ topicIds: true, ownWords: true, unclear: true });

/** Views of the desk that may be opened from elsewhere. */
export const DeskPath = z
  .string()
  .regex(/^(coverage|clips|syllabus|round|course|clip\/[0-9a-f-]{36}|topic\/[0-9a-f-]{36})$/);

/** Every message to the background, by its name, with the schema that it is checked against on arrival. */
export const MESSAGES = {
  /** The slip opens: which course, which topics, is it there already? */
  readSlip: z.object({
    text: Passage.shape.text,
    headings: ClipFields.shape.headings,
    page: Page,
  }),
  keepClip: z.object({
    courseId: Id,
    passage: Passage,
    headings: ClipFields.shape.headings,
    selectors: ClipFields.shape.selectors,
    pictures: z.array(PictureDraft).max(20),
    page: Page,
    ...Decision.shape,
  }),
  changeClip: z.object({ clipId: Id, ...Decision.shape }),
  /** On a site that was granted: which clips are from this page? */
  clipsHere: z.object({ url: Source.shape.url }),
  /** Put the script that finds a page's main explanation into the sender's page. */
  addReader: z.object({}),
  openDesk: z.object({ path: DeskPath }),
  /** From the popup's button: open the slip in that tab. */
  clipTab: z.object({ tabId: z.number().int(), wish: z.enum(WISHES) }),
} as const;

export type MessageName = keyof typeof MESSAGES;
export type MessageData<N extends MessageName> = z.input<(typeof MESSAGES)[N]>;
export type CheckedData<N extends MessageName> = z.output<(typeof MESSAGES)[N]>;

/** Names that a content script may send; the rest is for the extension's own pages. */
export const FROM_PAGES: readonly MessageName[] = [
  'readSlip',
  'keepClip',
  'changeClip',
  'clipsHere',
  'addReader',
  'openDesk',
];

/** A topic as the slip lists it. */
export interface SlipTopic {
  id: Id;
  code: string;
  title: string;
  depth: number;
}

export interface SlipSuggestion {
  topicId: Id;
  /** Words of the passage that decided. */
  terms: string[];
}

/** What the slip needs to know; null when there is no course yet. */
export interface SlipState {
  courseId: Id;
  courseName: string;
  topics: SlipTopic[];
  suggestions: SlipSuggestion[];
  /** The passage looks as if it were outside the syllabus. */
  offSyllabus: boolean;
  aimedTopicId: Id | null;
  /** The clip, when this passage of this page was kept before. */
  kept: ({ clipId: Id } & z.infer<typeof Decision>) | null;
}

/** Clips of a page, to be found in it again. */
export interface ClipsHere {
  clips: { clipId: Id; selectors: Selector[] }[];
  /** The clip through which the student came here a moment ago; null when they came by themselves. */
  openedId: Id | null;
}

/** What each message is answered with. */
export interface Replies {
  readSlip: SlipState | null;
  keepClip: { clipId: Id };
  changeClip: { clipId: Id };
  clipsHere: ClipsHere;
  addReader: null;
  openDesk: null;
  clipTab: null;
}

/** An answer, or an error by the name of its message in the locale file. */
export type Reply<N extends MessageName> =
  { ok: true; value: Replies[N] } | { ok: false; error: string; values: readonly string[] };
