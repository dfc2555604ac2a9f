import { readLabel } from './label.ts';
import type { Label } from './label.ts';
import type { PlainLine } from './plain-lines.ts';

/** What stands before a row's text. */
export type Mark =
  | { kind: 'heading'; level: number; label: Label | null }
  | { kind: 'label'; label: Label }
  | { kind: 'bullet'; sign: string }
  | { kind: 'none' };

/** A line with its parts told apart. */
export interface ReadLine {
  line: number;
  afterBlank: boolean;
  /** The column that it starts in, from 0. */
  indent: number;
  mark: Mark;
  /** The text behind the mark; may be empty. */
  text: string;
  /** How long the line is as written, in characters. */
  width: number;
  /** The text if the mark is none after all. */
  unmarked: string;
}

const TAB = 4;
const HEADING = /^(#{1,6})(?:\s+(.*?))?\s*#*$/;
const BULLET = /^(-{1,3}|\*{1,3}|[–—+•·◦▪▫■□●○‣⁃∙➢✓☐☑])(?:\s+(.*))?$/;
const LETTER_O_BULLET = /^(o)(?:\t+|\s{2,})(.*)$/;
const TIGHT_BULLET = /^([•·◦▪▫■□●○‣⁃∙➢✓☐☑])(\S.*)$/;

/** Tells apart the parts of a line; null for a line that is nothing but a rule, such as "-----". */
export function readLine({ line, text, afterBlank }: PlainLine): ReadLine | null {
  const body = text.trimStart();
  if (/^[-=_*~.–—\s]{3,}$/.test(body)) return null;
  const base = { line, afterBlank, indent: columnsOf(text), width: text.length, unmarked: tidy(body) };
  const heading = HEADING.exec(body);
  if (heading) return { ...base, ...readHeading(heading[1]?.length ?? 1, heading[2] ?? '') };
  return { ...base, ...readBody(body) };
}

/** The mark and the text of a heading. */
export function readHeading(level: number, text: string): Pick<ReadLine, 'mark' | 'text'> {
  const labelled = readLabel(text);
  const label = labelled?.label.sure ? labelled.label : null;
  return { mark: { kind: 'heading', level, label }, text: tidy(label && labelled ? labelled.rest : text) };
}

function readBody(body: string): Pick<ReadLine, 'mark' | 'text'> {
  const bullet = BULLET.exec(body) ?? LETTER_O_BULLET.exec(body) ?? TIGHT_BULLET.exec(body);
  const text = bullet ? (bullet[2] ?? '') : body;
  const labelled = readLabel(text.replace(/^\*\*(?=[\dA-Za-z(])/, ''));
  if (labelled && (!bullet || labelled.label.sure)) {
    return { mark: { kind: 'label', label: labelled.label }, text: tidy(labelled.rest) };
  }
  const mark: Mark = bullet ? { kind: 'bullet', sign: bullet[1] ?? '' } : { kind: 'none' };
  return { mark, text: tidy(text) };
}

/** Runs of space as one, and Markdown's marks for weight taken off. */
const tidy = (text: string): string =>
  text
    .replace(/\*\*|__/g, '')
    .replace(/\s+/g, ' ')
    .trim();

function columnsOf(text: string): number {
  let column = 0;
  for (const character of text) {
    if (character === '\t') column += TAB - (column % TAB);
    else if (character === ' ') column += 1;
    else break;
  }
  return column;
}
