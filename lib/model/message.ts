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

/** What tells one clip of a page from another besides its text. */
const Telling = {
  /** Of a moment of a video: its fragment. */
  selectors: ClipFields.shape.selectors.optional(),
  /** A diagram that was framed: another one each time, even under the same caption. */
  framed: z.boolean().optional(),
};

/** A part of what a tab shows: shares of its width and height. Some of it may lie outside. */
const ViewPart = z.object({
  left: z.number(),
  top: z.number(),
  width: z.number().positive(),
  height: z.number().positive(),
});

/** Views of the desk that may be opened from elsewhere. */
export const DeskPath = z
  .string()
  .regex(/^(coverage|lessons|clips|syllabus|round|course|clip\/[0-9a-f-]{36}|topic\/[0-9a-f-]{36})$/);

/** Every message to the background, by its name, with the schema that it is checked against on arrival. */
export const MESSAGES = {
  /** The slip opens: which course, which topics, is it there already? */
  readSlip: z.object({
    text: Passage.shape.text,
    headings: ClipFields.shape.headings,
    page: Page,
    ...Telling,
  }),
  keepClip: z.object({
    courseId: Id,
    passage: Passage,
    headings: ClipFields.shape.headings,
    selectors: ClipFields.shape.selectors,
    pictures: z.array(PictureDraft).max(20),
    page: Page,
    framed: Telling.framed,
    ...Decision.shape,
  }),
  changeClip: z.object({ clipId: Id, ...Decision.shape }),
  /** On a site that was granted: which clips are from this page? */
  clipsHere: z.object({ url: Source.shape.url }),
  /** Put the script that finds a page's main explanation into the sender's page. */
  addReader: z.object({}),
  openDesk: z.object({ path: DeskPath }),
  /** Cut these parts out of what the sender's tab shows now. */
  takePictures: z.object({ parts: z.array(ViewPart).min(1).max(20) }),
  /** Put a script that is seldom needed into the sender's page. */
  addScript: z.object({ script: z.enum(['pictures', 'moment', 'drawn-maths']) }),
  /** Open the slip on the diagram that was framed in the sender's tab. */
  showFramed: z.object({}),
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
  'takePictures',
  'addScript',
  'showFramed',
];

/** A topic as the slip lists it. */
export interface SlipTopic {
  id: Id;
  code: string;
  title: string;
  depth: number;
}

/** A moment of the page's video that was kept before. */
export interface KeptMoment {
  clipId: Id;
  /** As its selector has it: `t=12.4,20`. */
  fragment: string;
  /** What is kept of it, in the student's own words where there are any. */
  text: string;
}

export interface SlipSuggestion {
  topicId: Id;
  /** How likely it is that the passage belongs there, 0 to 1; 0 of one that nothing but the student suggests. */
  chance: number;
  /** Words of the passage that decided; none where its meaning alone did. */
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
  /** Of a video: what was kept from it before, in the order of time. */
  moments?: KeptMoment[];
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
  /** Null for each part that is not in view. */
  takePictures: (Omit<PictureDraft, 'alt'> | null)[];
  addScript: null;
  showFramed: null;
  clipTab: null;
}

/** An answer, or an error by the name of its message in the locale file. */
export type Reply<N extends MessageName> =
  { ok: true; value: Replies[N] } | { ok: false; error: string; values: readonly string[] };
