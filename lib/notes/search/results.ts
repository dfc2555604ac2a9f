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

/** Counts what is found, and keeps the best of each kind. */
export class Results {
  readonly #limit: number;
  readonly #kinds = new Map<SearchKind, KindFound>(
    SEARCH_KINDS.map((kind) => [kind, { kind, count: 0, found: [] }]),
  );

  /** @param limit how many of each kind are kept, at least one */
  constructor(limit: number) {
    this.#limit = limit;
  }

  add(document: SearchDocument, rank: number): void {
    const kind = this.#kinds.get(document.kind)!;
    kind.count += 1;
    const { found } = kind;
    const isFull = found.length === this.#limit;
    // Most of many are no better than what there is.
    if (isFull && rank < found[found.length - 1]!.rank) return;
    const one = { document, rank };
    let at = found.length;
    while (at > 0 && byRank(one, found[at - 1]!) < 0) at -= 1;
    found.splice(at, 0, one);
    if (isFull) found.pop();
  }

  /** Kinds of which something was found. */
  get kinds(): KindFound[] {
    return [...this.#kinds.values()].filter(({ count }) => count > 0);
  }
}
