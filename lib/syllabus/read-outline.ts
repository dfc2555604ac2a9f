import { StudentError } from '#lib/model/student-error.ts';
import { frontPageLength, opensWithTitle } from './outline/course-name.ts';
import { joinLines } from './outline/join-lines.ts';
import type { JoinedLine } from './outline/join-lines.ts';
import { kindsOf, parentsOf } from './outline/kinds.ts';
import { nest } from './outline/nesting.ts';
import { plainLines } from './outline/plain-lines.ts';
import { readLine } from './outline/read-line.ts';
import { repeatedCodes } from './outline/repeated-codes.ts';
import { settleLabels } from './outline/settle-labels.ts';
import { readShare } from './outline/share.ts';
import { cutText } from './outline/cut-text.ts';
import { LONGEST } from './outline-row.ts';
import type { OutlineRemark, OutlineRow, RemarkAbout } from './outline-row.ts';

export type { OutlineRemark, OutlineRow } from './outline-row.ts';

export interface OutlineReading {
  rows: OutlineRow[];
  /** What was understood with a guess only, in the order of the text. */
  remarks: OutlineRemark[];
  /** The title above the whole syllabus; null where there is none. */
  courseName: string | null;
}

/**
 * Reads a syllabus that was pasted or opened as text: numbered, set in, bulleted, under Markdown headings, or all of
 * these mixed. Takes time in proportion to the text.
 * Throws a StudentError for what cannot be a syllabus: see plainLines.
 */
export function readOutline(text: string): OutlineReading {
  const read = plainLines(text).flatMap((line) => readLine(line) ?? []);
  const joined = joinLines(settleLabels(read));
  if (joined.rows.length === 0) throw new StudentError('errorSyllabusEmpty');
  const remarks = joined.leftOut.map((line): OutlineRemark => ({ line, about: 'left-out' }));
  const front = joined.rows.slice(0, frontPageLength(joined.rows));
  remarks.push(...front.slice(1).map(({ line }): OutlineRemark => ({ line, about: 'left-out' })));
  const { rows, courseName: title } = rowsOfLines(joined.rows.slice(front.length), remarks);
  const courseName = front[0] ? cutText(front[0].text, LONGEST.courseName) : title;
  remarks.sort((a, b) => a.line - b.line);
  return { rows, remarks, courseName };
}

function rowsOfLines(
  lines: readonly JoinedLine[],
  remarks: OutlineRemark[],
): Omit<OutlineReading, 'remarks'> {
  const nested = nest(lines);
  const hasTitle = opensWithTitle(lines, nested);
  const rows = lines.map((line, i): OutlineRow => {
    const { depth = 0, skipped = false, lifted = false } = nested[i] ?? {};
    const note = (is: boolean, about: RemarkAbout): unknown => is && remarks.push({ line: line.line, about });
    note(line.joined, 'joined');
    note(skipped, 'level-skipped');
    note(lifted, 'too-deep');
    return rowOf(line, hasTitle ? Math.max(0, depth - 1) : depth);
  });
  const courseName = hasTitle ? (rows.shift()?.text ?? null) : null;
  finish(rows, remarks);
  return { rows, courseName: courseName && cutText(courseName, LONGEST.courseName) };
}

function rowOf(line: JoinedLine, depth: number): OutlineRow {
  const { text, share } = readShare(line.text);
  const code = 'label' in line.mark ? (line.mark.label?.code ?? '') : '';
  const tidy = text.replace(/[\s;,:]+$/, '');
  return { kind: 'topic', depth, code, text: tidy || text, share, line: line.line };
}

/** Gives the rows their kinds, cuts what is too long, and notes codes that stand twice. */
function finish(rows: OutlineRow[], remarks: OutlineRemark[]): void {
  const kinds = kindsOf(rows);
  rows.forEach((row, i) => {
    row.kind = kinds[i] ?? 'topic';
    const cut = cutText(row.text, row.kind === 'statement' ? LONGEST.statement : LONGEST.title);
    if (cut !== row.text) remarks.push({ line: row.line, about: 'cut' });
    row.text = cut;
  });
  for (const i of repeatedCodes(rows, parentsOf(rows))) {
    remarks.push({ line: rows[i]?.line ?? 0, about: 'code-twice' });
  }
}
