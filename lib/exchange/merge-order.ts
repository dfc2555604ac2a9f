import type { Id } from '#lib/model/basics.ts';

interface Placed {
  id: Id;
  order: number;
}

/**
 * Places of all rows together: those of the pack in its order, and each row that is the student's own behind the row
 * that it stood behind.
 */
export function ordersOf(ours: readonly Placed[], theirs: readonly Placed[]): Map<Id, number> {
  const byOrder = (a: Placed, b: Placed): number => a.order - b.order;
  const inPack = new Set(theirs.map(({ id }) => id));
  const behind = new Map<Id | null, Id[]>();
  let last: Id | null = null;
  for (const { id } of ours.toSorted(byOrder)) {
    if (inPack.has(id)) last = id;
    else behind.set(last, [...(behind.get(last) ?? []), id]);
  }
  const all = [
    ...(behind.get(null) ?? []),
    ...theirs.toSorted(byOrder).flatMap(({ id }) => [id, ...(behind.get(id) ?? [])]),
  ];
  return new Map(all.map((id, order) => [id, order]));
}
