import type { ShareUnit } from '#lib/model/topic.ts';

export type RowKind = 'topic' | 'statement';

/** One topic or statement of a syllabus being edited. Nesting is by depth: a row stands under the last shallower one. */
export interface OutlineDraftRow {
  kind: RowKind;
  /** 0 at the top; never more than one deeper than the row before. */
  depth: number;
  /** The syllabus's own numbering, such as "2.1" or "(a)"; empty where it has none. */
  code: string;
  text: string;
  /** Weight within the exam, relative to its siblings; null where none is given. */
  share: number | null;
  /** What the share is given in; parts where it is not said. */
  unit?: ShareUnit;
  /** The tier or option that the row belongs to, such as "Higher tier"; missing or empty where it is for everyone. */
  group?: string;
  /** Switched off: it stays in the syllabus, and nothing is asked of it or of what stands under it. */
  off?: boolean;
  /** The topic or statement that the row is already kept as. */
  id?: string;
  /** The student says that it is none of those kept before, however alike. */
  isNew?: boolean;
  /** Where it stood in what was read, to keep the order when a line is taken in later. */
  line?: number;
}

/** A row as read from a text. */
export interface OutlineRow extends Omit<OutlineDraftRow, 'id' | 'isNew' | 'off'> {
  /** The line of the text that it starts on, from 1. */
  line: number;
}

/**
 * What was understood with a guess only, or not at all.
 *
 * Rows that are there:
 * - `joined`: the row runs over several lines of the text;
 * - `level-skipped`: the numbering or the headings jump over a level;
 * - `code-twice`: the same number stands before two rows;
 * - `cut`: the text was too long and is kept in part;
 * - `too-deep`: the row stands below the deepest level that is kept, and was lifted to it;
 * - `no-parent`: what it should stand under is not there, so that it stands at the top;
 * - `circle`: it is said to stand under itself, so that it stands at the top;
 * - `two-parents`: it is said to stand in several places, and stands in the first of them;
 * - `number-unread`: its marks, hours or share are no number;
 * - `quote-open`: a quotation mark in a table is never closed, so that all were taken as characters.
 *
 * Lines that were left out (see isLeftOut):
 * - `left-out`: it says nothing of its own ("Candidates should be able to:");
 * - `no-text`: it has no text;
 * - `running-head`: it stands at the top or foot of several pages; `page-number`: it numbers a page;
 * - `small-print`: it is set small at the edge of a page;
 * - `contents`: it belongs to a table of contents;
 * - `prose`: a paragraph that explains, rather than a topic;
 * - `cover`: it stands on the first page, before the syllabus;
 * - `picture-page`: a page without text, blank or a picture;
 * - `not-outline`: a picture, a rule, code or the like;
 * - `too-many`: it comes after as many rows as are kept.
 */
export type RemarkAbout =
  | 'joined'
  | 'level-skipped'
  | 'code-twice'
  | 'cut'
  | 'too-deep'
  | 'no-parent'
  | 'circle'
  | 'two-parents'
  | 'number-unread'
  | 'quote-open'
  | LeftOut;

const LEFT_OUT = [
  'left-out',
  'no-text',
  'running-head',
  'page-number',
  'small-print',
  'contents',
  'prose',
  'cover',
  'picture-page',
  'not-outline',
  'too-many',
] as const;
type LeftOut = (typeof LEFT_OUT)[number];

export interface OutlineRemark {
  /** The line of the text, the row of the table or the item of the package, from 1. */
  line: number;
  about: RemarkAbout;
  /** What the line says, where it was left out. */
  text?: string;
  /** The page it stands on, from 1; where it is from a PDF. */
  page?: number;
}

/** Whether a remark is about a line that is no row. */
export const isLeftOut = ({ about }: OutlineRemark): boolean => LEFT_OUT.some((one) => one === about);

export interface OutlineReading {
  rows: OutlineRow[];
  /** What was understood with a guess only or left out, in the order of the text. */
  remarks: OutlineRemark[];
  /** The title above the whole syllabus; null where there is none. */
  courseName: string | null;
}

/** The longest texts and codes that are kept, in characters. */
export const LONGEST = { title: 500, statement: 2000, code: 40, courseName: 200, group: 60 } as const;

/** The deepest level of rows, counted from 0. */
export const DEEPEST = 11;

/** The most rows that are read at once: far more than a long syllabus has. */
export const MOST_ROWS = 5000;
