import { StudentError } from '#lib/model/student-error.ts';
import { LONGEST } from '../outline-row.ts';
import type { OutlineReading, OutlineRemark, OutlineRow, RemarkAbout } from '../outline-row.ts';
import { frontPageLength, opensWithTitle } from './course-name.ts';
import { cutText } from './cut-text.ts';
import { finishRows } from './finish-rows.ts';
import { joinLines } from './join-lines.ts';
import type { JoinedLine } from './join-lines.ts';
import { nest } from './nesting.ts';
import type { ReadLine } from './read-line.ts';
import { settleLabels } from './settle-labels.ts';
import { readTail } from './tail.ts';

/**
 * The rows that lines make up, whatever they were read from.
 * Errors: StudentError `errorSyllabusEmpty` where no line says anything.
 */
export function readLines(lines: readonly ReadLine[]): OutlineReading {
  const joined = joinLines(settleLabels(lines));
  if (joined.rows.length === 0) throw new StudentError('errorSyllabusEmpty');
  const front = joined.rows.slice(0, frontPageLength(joined.rows));
  const textOf = new Map(lines.map(({ line, unmarked }) => [line, unmarked]));
  const remarks = [...joined.leftOut, ...front.slice(1).map(({ line }) => line)].map(
    (line): OutlineRemark => ({ line, about: 'left-out', text: textOf.get(line) ?? '' }),
  );
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
  finishRows(rows, remarks);
  return { rows, courseName: courseName && cutText(courseName, LONGEST.courseName) };
}

function rowOf(line: JoinedLine, depth: number): OutlineRow {
  const { text, ...tail } = readTail(line.text);
  const label = 'label' in line.mark ? line.mark.label : null;
  const code = label?.code ?? '';
  const tidy = text.replace(/[\s;,:]+$/, '');
  const row: OutlineRow = { kind: 'topic', depth, code, text: tidy || text, line: line.line, ...tail };
  // "Option B Estuaries" is an option as a whole.
  return label?.word === 'option' && !row.group ? { ...row, group: code || row.text } : row;
}
