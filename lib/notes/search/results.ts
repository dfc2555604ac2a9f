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
  readonly #kinds: readonly KindFound[] = SEARCH_KINDS.map((kind) => ({ kind, count: 0, found: [] }));
  /** By kind: what is worse than that is not kept any more. */
  readonly #least = new Float64Array(SEARCH_KINDS.length);

  /** @param limit how many of each kind are kept, at least one */
  constructor(limit: number) {
    this.#limit = limit;
  }

  /** Counts one more of a kind, by its place in SEARCH_KINDS. Gives whether it may be among the best. */
  count(kind: number, rank: number): boolean {
    this.#kinds[kind]!.count += 1;
    return rank >= this.#least[kind]!;
  }

  /** Keeps what was counted, if it is among the best. */
  keep(document: SearchDocument, rank: number): void {
    const kind = SEARCH_KINDS.indexOf(document.kind);
    const { found } = this.#kinds[kind]!;
    const one = { document, rank };
    let at = found.length;
    while (at > 0 && byRank(one, found[at - 1]!) < 0) at -= 1;
    found.splice(at, 0, one);
    if (found.length > this.#limit) found.pop();
    if (found.length === this.#limit) this.#least[kind] = found[found.length - 1]!.rank;
  }

  /** Kinds of which something was found. */
  get kinds(): KindFound[] {
    return this.#kinds.filter(({ count }) => count > 0);
  }
}
