import { SEARCH_KINDS, type SearchDocument } from './document.ts';
import { type Filter, leavesOut, passes } from './filter.ts';
import { type Form, formsOf } from './forms.ts';
import { type Query, readQuery } from './query.ts';
import { Ranking } from './ranking.ts';
import { WordReader } from './read-words.ts';
import { type KindFound, Results } from './results.ts';
import { Scorer } from './scorer.ts';
import { Vocabulary } from './vocabulary.ts';

/** A document in the index. */
interface Kept {
  document: SearchDocument;
  slot: number;
  /** Its words in order, field by field, as phrases are looked for; words that only hyphens join stand last. */
  words: string;
}

export interface SearchResult {
  /** How many things were found, in all kinds. */
  count: number;
  /** Whether they hold every word that was looked for; else they hold some, since nothing holds all. */
  isComplete: boolean;
  /** Whether there was a word to look for. */
  hasWords: boolean;
  /** Kinds of which something was found. */
  kinds: KindFound[];
  /** The words of the deck that were found, each with the place among the words looked for that it answers. */
  marked: ReadonlyMap<string, number>;
}

/** What stands between fields: no word, so that no phrase goes across. */
const APART = '|';

/**
 * A full-text index over documents of any kind, changed document by document. The same documents give the same results,
 * whatever order they came in and whatever was there before.
 *
 * MiniSearch's radix tree holds the vocabulary; postings and ranking are our own, since MiniSearch itself makes an
 * object of every document found, which takes longer than a key stroke may over 20,000 documents (docs/benchmarks.md).
 */
export class SearchIndex {
  readonly reader = new WordReader();
  readonly #vocabulary = new Vocabulary();
  readonly #kept = new Map<string, Kept>();
  readonly #slots: (Kept | undefined)[] = [];
  /** By slot: the place of the kind in SEARCH_KINDS. */
  readonly #kinds: number[] = [];
  readonly #free: number[] = [];
  readonly #scorer = new Scorer();

  get size(): number {
    return this.#kept.size;
  }

  get(id: string): SearchDocument | undefined {
    return this.#kept.get(id)?.document;
  }

  documents(): SearchDocument[] {
    return Array.from(this.#kept.values(), ({ document }) => document);
  }

  /** Puts a document in, in place of the one with its id. */
  put(document: SearchDocument): void {
    this.remove(document.id);
    const slot = this.#free.pop() ?? this.#slots.length;
    const { counts, words } = this.#count(document);
    for (const [word, count] of counts) this.#vocabulary.add(word, slot, count);
    const kept: Kept = { document, slot, words };
    this.#slots[slot] = kept;
    this.#kinds[slot] = SEARCH_KINDS.indexOf(document.kind);
    this.#kept.set(document.id, kept);
    this.#scorer.add(slot, counts.size);
  }

  /** Takes a document out, if it is there. */
  remove(id: string): void {
    const kept = this.#kept.get(id);
    if (!kept) return;
    const words = new Set(kept.words.split(' '));
    for (const word of words) if (word !== '' && word !== APART) this.#vocabulary.remove(word, kept.slot);
    this.#kept.delete(id);
    this.#slots[kept.slot] = undefined;
    this.#free.push(kept.slot);
    this.#scorer.remove(kept.slot);
  }

  /**
   * Finds what passes the filter and holds the words of a text, best first within each kind. Where nothing holds all of
   * them, what holds most of them comes first.
   * @param limit how many of each kind are given, at least one; all are counted
   */
  search(text: string, filter: Filter, limit: number): SearchResult {
    const query = readQuery(text, this.reader);
    const found = this.#find(query, filter, limit, false);
    // The right spelling may be elsewhere in the deck only.
    return found.count > 0 || query.words.length === 0 ? found : this.#find(query, filter, limit, true);
  }

  #find(query: Query, filter: Filter, limit: number, alsoNear: boolean): SearchResult {
    const forms = query.words.map((word) => formsOf(word, this.#vocabulary, alsoNear));
    const ranking = new Ranking(this.#scorer);
    query.words.forEach((word, i) => ranking.add(forms[i]!, word.isOptional));
    const results = new Results(limit);
    const isEvery = query.phrases.length === 0 && !leavesOut(filter);
    const isComplete = ranking.visit((slot, rank) => {
      if (!isEvery && !this.#isWanted(slot, query, filter)) return false;
      // Of many thousands, only the few that are kept are looked at themselves.
      if (results.count(this.#kinds[slot]!, rank)) results.keep(this.#slots[slot]!.document, rank);
      return true;
    });
    const { kinds } = results;
    return {
      count: kinds.reduce((sum, { count }) => sum + count, 0),
      isComplete,
      hasWords: query.words.length > 0,
      kinds,
      marked: markedBy(query, forms),
    };
  }

  #isWanted(slot: number, { phrases }: Query, filter: Filter): boolean {
    const { document, words } = this.#slots[slot]!;
    const clip = document.clipId === null ? undefined : this.get(document.clipId);
    return passes(document, filter, clip) && phrases.every((phrase) => words.includes(phrase));
  }

  #count({ fields }: SearchDocument): { counts: Map<string, number>; words: string } {
    const counts = new Map<string, number>();
    const inOrder: string[] = [APART];
    const joinedWords: string[] = [];
    for (const { text, weight } of fields) {
      this.reader.read(text, (word, _start, _end, isJoined) => {
        counts.set(word, (counts.get(word) ?? 0) + weight);
        (isJoined ? joinedWords : inOrder).push(word);
      });
      inOrder.push(APART);
    }
    for (const joined of joinedWords) inOrder.push(joined, APART);
    return { counts, words: inOrder.join(' ') };
  }
}

/** Little words are not marked among others: they stand everywhere. */
function markedBy({ words }: Query, forms: readonly Form[][]): Map<string, number> {
  const marked = new Map<string, number>();
  words.forEach(({ isOptional }, i) => {
    if (!isOptional)
      for (const { entry } of forms[i]!) if (!marked.has(entry.word)) marked.set(entry.word, i);
  });
  return marked;
}
