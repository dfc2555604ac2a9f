import type { Id } from '#lib/model/basics.ts';
import type { Mark } from '#lib/model/mark.ts';
import type { PaperPart } from '#lib/model/paper.ts';
import type { Sitting } from '#lib/model/sitting.ts';
import { StudentError } from '#lib/model/student-error.ts';
import type { MarkFile } from './mark-file.ts';
import { type MarkedPart, markingOf } from './marking.ts';

/**
 * What is odd about a mark of a file that came back; none of them is taken in but the last:
 * - `altered`: it has the id of a mark that the student has, and says something else;
 * - `unknownPart`: it is for a part that the paper does not have;
 * - `overMarks`: it gives more than the part is out of;
 * - `asStudent`: it says that the student gave it, and the student has no such mark. It is taken in as someone else's.
 */
export type MarkOddity = 'altered' | 'unknownPart' | 'overMarks' | 'asStudent';

export interface MergedMarks {
  /** Marks to be kept beside those that are there: none of those is changed. Empty where the file was taken in before. */
  added: Mark[];
  /** Parts that stand open between marks that did not see each other: to be settled by someone. */
  open: MarkedPart[];
  odd: { mark: Mark; about: MarkOddity }[];
}

/** What the student has of a sitting. */
export interface OwnSitting {
  sitting: Sitting;
  parts: readonly PaperPart[];
  marks: readonly Mark[];
  /**
   * Digests of the files that were handed out to be marked; empty where none is on record, so that nothing can be
   * compared. What the student changed in the paper since then is no harm.
   */
  handedOut: readonly string[];
}

/**
 * Takes marks of a file that came back into the student's own. Nothing is overwritten: both stand side by side, and
 * where they differ without one having seen the other, the part is open.
 * Errors: StudentError `errorMarkFileForeign` where the file is of another sitting or paper, `errorMarkFileSealed` where
 * it is of this one with another paper or other answers in it than were handed out.
 */
export function mergeMarks(own: OwnSitting, file: MarkFile): MergedMarks {
  const { sitting, paper } = file.sealed;
  if (sitting.id !== own.sitting.id || paper.id !== own.sitting.paperId)
    throw new StudentError('errorMarkFileForeign', paper.title);
  if (own.handedOut.length > 0 && !own.handedOut.includes(file.digest))
    throw new StudentError('errorMarkFileSealed');
  const known = new Map(own.marks.map((mark) => [mark.id, mark]));
  const parts = new Map(own.parts.map((part) => [part.id, part]));
  const merged: MergedMarks = { added: [], open: [], odd: [] };
  for (const mark of file.marks) {
    const about = oddityOf(mark, known, parts);
    if (about) merged.odd.push({ mark, about });
    if (known.has(mark.id) || (about && about !== 'asStudent')) continue;
    const taken = about ? { ...mark, by: { ...mark.by, isStudent: false } } : mark;
    known.set(mark.id, taken);
    merged.added.push(taken);
  }
  const all = markingOf(own.parts, [...own.marks, ...merged.added]);
  merged.open = all.parts.filter(({ isOpen }) => isOpen);
  return merged;
}

function oddityOf(
  mark: Mark,
  known: ReadonlyMap<Id, Mark>,
  parts: ReadonlyMap<Id, PaperPart>,
): MarkOddity | null {
  const ours = known.get(mark.id);
  if (ours) return isSame(ours, mark) ? null : 'altered';
  const part = parts.get(mark.partId);
  if (!part) return 'unknownPart';
  if ((mark.marks ?? 0) > part.marks) return 'overMarks';
  return mark.by.isStudent ? 'asStudent' : null;
}

/** Whether two say the same; a mark taken in as someone else's is still the one that said it was the student's. */
const isSame = (a: Mark, b: Mark): boolean => factsOf(a) === factsOf(b);

const factsOf = ({ id, sittingId, partId, at, by, marks, outOf, remark, lost, replaces }: Mark): string =>
  JSON.stringify([
    id,
    sittingId,
    partId,
    at,
    by.name,
    marks,
    outOf,
    remark,
    lost.map(({ because, marks: some }) => [because, some]),
    replaces,
  ]);
