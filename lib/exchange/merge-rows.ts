import { type Id } from '#lib/model/basics.ts';

/** Something that a pack brings, under an id that stays. */
export interface Packed {
  id: Id;
}

/** What becomes of one list of a pack when it is taken in. Each list is in the order of the pack. */
export interface MergedRows<Row, Theirs> {
  /** Not in the deck yet. */
  added: Theirs[];
  /** Rows of the deck as they will be, where the pack changes something in them. */
  changed: { before: Row; after: Row }[];
  /** Rows of the deck that the pack has no longer. */
  dropped: Row[];
  /** Rows that the student changed and the pack would change as well: they stay as the student has them. */
  kept: Row[];
}

/** Fields that are changed together: taking one without the others would make a third thing of two. */
export type FieldGroups<Theirs> = readonly (readonly (keyof Theirs & string)[])[];

export interface MergeRowsInput<Row extends Packed, Theirs extends Packed> {
  /** The deck's rows that may belong to the pack, the student's own among them. */
  ours: readonly Row[];
  /** The same list of the pack that was taken in last; empty where there was none. */
  base: readonly Theirs[];
  theirs: readonly Theirs[];
  groups: FieldGroups<Theirs>;
}

/**
 * Three-way merge by id: what the student left as the last pack had it follows the new pack; what the student changed
 * stays. Without a last pack nobody can say who changed what: the student's stays. What the student deleted does not
 * come back, and what is in no pack is the student's own.
 */
export function mergeRows<Row extends Theirs, Theirs extends Packed>({
  ours,
  base,
  theirs,
  groups,
}: MergeRowsInput<Row, Theirs>): MergedRows<Row, Theirs> {
  const ourById = byId(ours);
  const baseById = byId(base);
  const merged: MergedRows<Row, Theirs> = { added: [], changed: [], dropped: [], kept: [] };
  for (const their of theirs) {
    const our = ourById.get(their.id);
    const last = baseById.get(their.id);
    if (!our) {
      if (!last) merged.added.push(their);
      continue;
    }
    const { row, isKept } = mergeFields(our, last, their, groups);
    if (row !== our) merged.changed.push({ before: our, after: row });
    if (isKept) merged.kept.push(our);
  }
  const theirIds = byId(theirs);
  for (const { id } of base) {
    const our = ourById.get(id);
    if (our && !theirIds.has(id)) merged.dropped.push(our);
  }
  return merged;
}

/** Merges the fields of one row, group by group; gives the row itself where nothing changes. */
export function mergeFields<Row extends Theirs, Theirs extends object>(
  our: Row,
  last: Theirs | undefined,
  their: Theirs,
  groups: FieldGroups<Theirs>,
): { row: Row; isKept: boolean } {
  let row = our;
  let isKept = false;
  for (const fields of groups) {
    if (isSame<Theirs>(our, their, fields)) continue;
    if (last && isSame(last, their, fields)) continue;
    if (last && isSame<Theirs>(our, last, fields))
      row = { ...row, ...Object.fromEntries(fields.map((field) => [field, their[field]])) };
    else isKept = true;
  }
  return { row, isKept };
}

/** Whether two have the same in these fields: values, or lists of values. */
export const isSame = <T>(a: T, b: T, fields: readonly (keyof T)[]): boolean =>
  fields.every((field) => a[field] === b[field] || JSON.stringify(a[field]) === JSON.stringify(b[field]));

const byId = <T extends Packed>(all: readonly T[]): Map<Id, T> => new Map(all.map((one) => [one.id, one]));
