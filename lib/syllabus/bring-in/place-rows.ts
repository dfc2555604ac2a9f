import { StudentError } from '#lib/model/student-error.ts';
import type { ShareUnit } from '#lib/model/topic.ts';
import { normaliseRows } from '../normalise-rows.ts';
import { cutText } from '../outline/cut-text.ts';
import { finishRows } from '../outline/finish-rows.ts';
import { DEEPEST, LONGEST, MOST_ROWS } from '../outline-row.ts';
import type { OutlineReading, OutlineRemark, OutlineRow, RowKind } from '../outline-row.ts';

/** A topic or statement with its place in the tree. */
export interface Placed {
  line: number;
  /** Null where its text is to decide. */
  kind: RowKind | null;
  depth: number;
  code: string;
  text: string;
  share: number | null;
  unit: ShareUnit;
  group: string;
}

/**
 * The reading that placed topics and statements make.
 * Errors: StudentError `errorSyllabusEmpty` where there are none.
 *
 * @param remarks what is to be said of them already; they are put in order
 */
export function placeRows(
  placed: readonly Placed[],
  remarks: readonly OutlineRemark[],
  title: string | null,
): OutlineReading {
  if (placed.length === 0) throw new StudentError('errorSyllabusEmpty');
  const all = [...remarks];
  const kept = placed.slice(0, MOST_ROWS);
  const first = placed[kept.length];
  if (first) all.push({ line: first.line, about: 'too-many', text: first.text });
  const rows = kept.map((one): OutlineRow => {
    if (one.depth > DEEPEST) all.push({ line: one.line, about: 'too-deep' });
    return rowOf(one);
  });
  finishRows(
    rows,
    all,
    kept.map(({ kind }) => kind),
  );
  all.sort((a, b) => a.line - b.line);
  const courseName = title === null ? null : cutText(title, LONGEST.courseName);
  return { rows: normaliseRows(rows), remarks: all, courseName };
}

function rowOf({ depth, code, text, share, unit, group, line }: Placed): OutlineRow {
  return {
    kind: 'topic',
    depth: Math.min(depth, DEEPEST),
    code: cutText(code, LONGEST.code),
    text,
    share,
    ...(share !== null && unit !== 'parts' ? { unit } : {}),
    ...(group ? { group: cutText(group, LONGEST.group) } : {}),
    line,
  };
}
