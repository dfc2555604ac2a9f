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
  /** The topic or statement that the row is already kept as. */
  id?: string;
}

/** A row as read from a text. */
export interface OutlineRow extends Omit<OutlineDraftRow, 'id'> {
  /** The line of the text that it starts on, from 1. */
  line: number;
}

/**
 * What was understood with a guess only:
 * - `joined`: the row runs over several lines of the text;
 * - `level-skipped`: the numbering or the headings jump over a level;
 * - `code-twice`: the same number stands before two rows;
 * - `cut`: the text was too long and is kept in part;
 * - `left-out`: the line says nothing of its own (a page number, "Candidates should be able to:");
 * - `too-deep`: the row stands below the deepest level that is kept, and was lifted to it.
 */
export type RemarkAbout = 'joined' | 'level-skipped' | 'code-twice' | 'cut' | 'left-out' | 'too-deep';

export interface OutlineRemark {
  /** The line of the text, from 1. */
  line: number;
  about: RemarkAbout;
}

/** The longest texts and codes that are kept, in characters. */
export const LONGEST = { title: 500, statement: 2000, code: 40, courseName: 200 } as const;

/** The deepest level of rows, counted from 0. */
export const DEEPEST = 11;
