import { StudentError } from '#lib/model/student-error.ts';
import { MOST_ROWS } from '../outline-row.ts';

/** The most that is read at once: far more than a long syllabus has. */
const MOST_CHARACTERS = 1_000_000;

/** What stands further on in a line is not read; no row is kept that long. */
const LONGEST_LINE = 4000;

/** A line of the text that is not blank. */
export interface PlainLine {
  /** From 1. */
  line: number;
  text: string;
  /** Whether a blank line, or the start of the text, stands before it. */
  afterBlank: boolean;
}

/** Every line end that Unicode knows (Unicode Standard, section 5.8). */
const LINE_END = /\r\n?|[\n\v\f\u0085\u2028\u2029]/;
const ODD_SPACES = /[\u00a0\u1680\u2000-\u200a\u202f\u205f\u3000]/g;
const UNSEEN = /[\u00ad\u200b-\u200f\u2060\ufeff]/g;
/** Control characters other than tab and line ends, and the sign for bytes that are not text. */
// eslint-disable-next-line no-control-regex -- finding them is the point
const CONTROLS = /[\u0001-\u0008\u000e-\u001f\u007f\u0080-\u0084\u0086-\u009f\ufffd]/g;

/** A text with more than this part of control characters is not a text. */
const MOST_CONTROLS = 0.01;
const FEW_CONTROLS = 3;

/**
 * The lines of a text that are not blank, with every kind of space as a plain one.
 * Throws a StudentError: errorSyllabusNotText, errorSyllabusTooLarge (characters, most),
 * errorSyllabusManyLines (lines, most), errorSyllabusEmpty.
 */
export function plainLines(text: string): PlainLine[] {
  checkIsText(text);
  const clean = text.replace(CONTROLS, '').replace(UNSEEN, '').replace(ODD_SPACES, ' ');
  const lines: PlainLine[] = [];
  let afterBlank = true;
  clean.split(LINE_END).forEach((raw, i) => {
    const blank = raw.trim() === '';
    if (!blank) lines.push({ line: i + 1, text: raw.slice(0, LONGEST_LINE).trimEnd(), afterBlank });
    afterBlank = blank;
  });
  if (lines.length === 0) throw new StudentError('errorSyllabusEmpty');
  if (lines.length > MOST_ROWS) throw new StudentError('errorSyllabusManyLines', lines.length, MOST_ROWS);
  return lines;
}

/** Throws a StudentError for what is no text or too much of it: errorSyllabusTooLarge, errorSyllabusNotText. */
export function checkIsText(text: string): void {
  if (text.length > MOST_CHARACTERS) {
    throw new StudentError('errorSyllabusTooLarge', text.length, MOST_CHARACTERS);
  }
  const controls = text.match(CONTROLS)?.length ?? 0;
  const tooMany = controls > FEW_CONTROLS && controls > MOST_CONTROLS * text.length;
  if (text.includes('\0') || tooMany) throw new StudentError('errorSyllabusNotText');
}
