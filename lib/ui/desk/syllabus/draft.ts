import type { PageOfText } from '#lib/syllabus/bring-in/specification/read-specification.ts';
import type { TextFormat } from '#lib/syllabus/bring-in/read-text.ts';
import type { OutlineDraftRow, OutlineReading, OutlineRemark } from '#lib/syllabus/outline-row.ts';
import { matchRows } from '#lib/syllabus/match-rows.ts';
import type { Syllabus } from '#lib/syllabus/rows-of.ts';

/** What a draft was read from. */
export type DraftSource =
  | { is: 'saved' }
  | { is: 'text'; text: string; format: TextFormat }
  | { is: 'pdf'; name: string; pages: PageOfText[]; of: number; from: number; to: number };

/** A syllabus that is being put right, and is not saved yet. */
export interface Draft {
  rows: OutlineDraftRow[];
  remarks: OutlineRemark[];
  source: DraftSource;
}

/** Reads a text as what the student says it is, or as what it seems to be. Throws the StudentErrors of its reader. */
export async function draftOfText(text: string, format: TextFormat | null, saved: Syllabus): Promise<Draft> {
  // The readers are loaded when they are needed: most visits to this page need none.
  const { readText, recogniseFormat } = await import('#lib/syllabus/bring-in/read-text.ts');
  const as = format ?? recogniseFormat(text);
  return draftOf(readText(text, as), { is: 'text', text, format: as }, saved);
}

/** Reads some pages of a PDF. Errors: those of readSpecification. */
export async function draftOfPages(
  source: Extract<DraftSource, { is: 'pdf' }>,
  saved: Syllabus,
): Promise<Draft> {
  const { readSpecification } = await import('#lib/syllabus/bring-in/specification/read-specification.ts');
  const chosen = source.pages.filter(({ page }) => page >= source.from && page <= source.to);
  return draftOf(readSpecification(chosen), source, saved);
}

/** Each row with the topic or statement that it was before, settled once: later edits do not unsettle it. */
function draftOf({ rows, remarks }: OutlineReading, source: DraftSource, saved: Syllabus): Draft {
  const before = matchRows(rows, saved);
  return {
    rows: rows.map((row, i) => (before[i] ? { ...row, id: before[i].id } : row)),
    remarks,
    source,
  };
}
