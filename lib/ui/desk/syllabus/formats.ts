import type { TextFormat } from '#lib/syllabus/bring-in/read-text.ts';
import type { TextName } from '../../text.ts';
import type { Counted } from './remark-text.ts';

interface FormatWords {
  format: TextFormat;
  name: TextName;
  /** What its places are counted in. */
  counted: Counted;
}

/** The formats that a text may be read as, in the student's words. */
export const FORMATS: readonly FormatWords[] = [
  { format: 'outline', name: 'formatOutline', counted: 'line' },
  { format: 'markdown', name: 'formatMarkdown', counted: 'line' },
  { format: 'table', name: 'formatTable', counted: 'row' },
  { format: 'case', name: 'formatCase', counted: 'item' },
];
