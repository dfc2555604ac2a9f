import { plainLines } from './outline/plain-lines.ts';
import { readLine } from './outline/read-line.ts';
import { readLines } from './outline/read-lines.ts';
import type { OutlineReading } from './outline-row.ts';

export type { OutlineReading, OutlineRemark, OutlineRow } from './outline-row.ts';

/**
 * Reads a syllabus that was pasted or opened as text: numbered, set in, bulleted, under Markdown headings, or all of
 * these mixed. Takes time in proportion to the text.
 * Throws a StudentError for what cannot be a syllabus: see plainLines.
 */
export function readOutline(text: string): OutlineReading {
  return readLines(plainLines(text).flatMap((line) => readLine(line) ?? []));
}
