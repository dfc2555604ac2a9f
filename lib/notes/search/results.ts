import { SEARCH_KINDS, type SearchDocument, type SearchKind } from './document.ts';

/** A document that was found. */
export interface Found {
  document: SearchDocument;
  /** Comparable within one search, also between kinds: more is better. */
  rank: number;
}

/** What was found of one kind. */
export interface KindFound {
  kind: SearchKind;
  /** How many there are, whether given or not. */
  count: number;
  /** The best of them, best first; of equals the newest first. */
  found: Found[];
}

/** The order of results: by rank, then the newest first; the id settles what is left. */
export const byRank = (a: Found, b: Found): number =>
  b.rank - a.rank || b.document.createdAt - a.document.createdAt || (a.document.id < b.document.id ? -1 : 1);

/** The best of each kind. */
export function bestByKind(all: readonly Found[], limit: number): KindFound[] {
  const kinds = Map.groupBy(all, ({ document }) => document.kind);
  return SEARCH_KINDS.flatMap((kind) => {
    const found = kinds.get(kind);
    return found ? [{ kind, count: found.length, found: bestOf(found, limit) }] : [];
  });
}

/** The best few, without sorting the many others. */
function bestOf(found: readonly Found[], limit: number): Found[] {
  const best: Found[] = [];
  for (const one of found) {
    const last = best[best.length - 1];
    if (best.length >= limit && (limit === 0 || byRank(one, last!) > 0)) continue;
    let at = best.length;
    while (at > 0 && byRank(one, best[at - 1]!) < 0) at -= 1;
    best.splice(at, 0, one);
    if (best.length > limit) best.pop();
  }
  return best;
}
