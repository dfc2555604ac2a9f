import type { Id } from '#lib/model/basics.ts';
import { LOST_BECAUSE, type LostBecause, type Mark } from '#lib/model/mark.ts';
import type { PaperPart } from '#lib/model/paper.ts';

/** Causes of lost marks, and those for which nobody gave any. */
export type Cause = LostBecause | 'unsaid' | 'unmarked';
export const CAUSES: readonly Cause[] = [...LOST_BECAUSE, 'unsaid', 'unmarked'];

/** How a part stands. */
export interface MarkedPart {
  part: PaperPart;
  /** What counts: 0 where it is unmarked; of marks that differ, the lowest. Strict by default. */
  got: number;
  isMarked: boolean;
  /** The marks that nothing replaces, the oldest first. Several differ where two marked without seeing each other. */
  standing: Mark[];
  /** Marks differ: someone has to settle it by a mark that replaces them all. */
  isOpen: boolean;
  /** Marks lost, by cause; causes of none are left out. They add up to what is missing. */
  lost: Map<Cause, number>;
  /** All its marks ever given, the oldest first. */
  history: Mark[];
}

/** How a sitting stands. */
export interface Marking {
  parts: MarkedPart[];
  got: number;
  outOf: number;
  /** Marks of parts that are unmarked: lost until they are marked. */
  unmarked: number;
}

/**
 * How the parts of a paper stand by the marks of one sitting. The order of the marks does not matter. Marks were given
 * out of what the part was out of then; where that changed, they are cut to what it is out of now, and its missing
 * marks follow.
 */
export function markingOf(parts: readonly PaperPart[], marks: readonly Mark[]): Marking {
  const byPart = Map.groupBy(new Map(marks.map((mark) => [mark.id, mark])).values(), ({ partId }) => partId);
  const marked = parts.map((part) => markedPart(part, byPart.get(part.id) ?? []));
  const sum = (of: (one: MarkedPart) => number): number => marked.reduce((all, one) => all + of(one), 0);
  return {
    parts: marked,
    got: sum(({ got }) => got),
    outOf: sum(({ part }) => part.marks),
    unmarked: sum(({ part, isMarked }) => (isMarked ? 0 : part.marks)),
  };
}

function markedPart(part: PaperPart, marks: readonly Mark[]): MarkedPart {
  const history = marks.toSorted((a, b) => a.at - b.at || (a.id < b.id ? -1 : 1));
  const standing = standingOf(history);
  const given = standing.filter(({ marks: got }) => got !== null);
  // The lowest; of those alike, the latest.
  const counts = given.reduce<Mark | null>(
    (low, mark) => (!low || mark.marks! <= low.marks! ? mark : low),
    null,
  );
  const got = Math.min(counts?.marks ?? 0, part.marks);
  return {
    part,
    got,
    isMarked: counts !== null,
    standing,
    isOpen: new Set(standing.map((mark) => mark.marks)).size > 1,
    lost: lostBy(part.marks - got, counts),
    history,
  };
}

/** Marks that no other replaces. Marks that replace each other in a circle, which only a forged file has, all stand. */
function standingOf(history: readonly Mark[]): Mark[] {
  const replaced = new Set(history.flatMap(({ replaces }) => replaces));
  const standing = history.filter(({ id }) => !replaced.has(id));
  return standing.length > 0 ? standing : [...history];
}

function lostBy(missing: number, counts: Mark | null): Map<Cause, number> {
  const lost = new Map<Cause, number>();
  if (missing <= 0) return lost;
  if (!counts) return lost.set('unmarked', missing);
  let left = missing;
  for (const { because, marks } of counts.lost) {
    const taken = Math.min(left, marks);
    if (taken > 0) lost.set(because, taken);
    left -= taken;
  }
  if (left > 0) lost.set('unsaid', left);
  return lost;
}

/** Ids that a new mark of a part has to name, for what the one who marks has before their eyes. */
export const replacedBy = ({ standing }: Pick<MarkedPart, 'standing'>): Id[] => standing.map(({ id }) => id);
