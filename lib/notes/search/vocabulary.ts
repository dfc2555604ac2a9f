import SearchableMap from 'minisearch/SearchableMap';
import { stemOf } from './fold.ts';

/** How often a word stands in a document, packed into one number with the document's slot. */
export const packed = (slot: number, count: number): number => (slot << COUNT_BITS) | Math.min(count, MOST);
export const slotOf = (posting: number): number => posting >> COUNT_BITS;
export const countOf = (posting: number): number => posting & MOST;
const COUNT_BITS = 6;
const MOST = (1 << COUNT_BITS) - 1;

/** A word of the deck and where it stands. */
export interface Entry {
  word: string;
  stem: string;
  /** In order of slots. */
  postings: number[];
}

/** A word that is as far from what was looked for. */
export interface Near {
  entry: Entry;
  /** Edits. */
  distance: number;
}

/** Every word that stands in a document, with what is needed to look for it. */
export class Vocabulary {
  readonly #entries = new Map<string, Entry>();
  readonly #byStem = new Map<string, Entry[]>();
  /** The same entries in a radix tree: beginnings and misspellings. */
  readonly #tree = new SearchableMap<Entry>();

  get size(): number {
    return this.#entries.size;
  }

  get(word: string): Entry | undefined {
    return this.#entries.get(word);
  }

  /** Other forms of a word that are in the deck, and the word itself if it is. */
  withStemOf(word: string): readonly Entry[] {
    return this.#byStem.get(stemOf(word)) ?? [];
  }

  startingWith(beginning: string): Iterable<Entry> {
    return this.#tree.atPrefix(beginning).values();
  }

  /**
   * The words that a word is most likely meant for: those with fewest edits, within limits by its length. Short words
   * and numbers have to be right. One edit is an insertion, deletion, substitution or the exchange of two neighbours,
   * which make up 80 % of misspellings: Damerau (1964), Communications of the ACM 7(3), 171-176 (from memory).
   */
  near(word: string): Near[] {
    const edits = editsAllowed(word);
    if (edits === 0) return [];
    const found = [...this.#tree.fuzzyGet(word, edits).values()].map(([entry, distance]) => ({
      entry,
      distance,
    }));
    for (const other of exchanged(word)) {
      const entry = this.#entries.get(other);
      if (entry) found.push({ entry, distance: 1 });
    }
    const others = found.filter(({ distance }) => distance > 0);
    const least = Math.min(...others.map(({ distance }) => distance));
    return others.filter(({ distance }) => distance === least);
  }

  /** Notes that a word stands in a document so many times. */
  add(word: string, slot: number, count: number): void {
    const { postings } = this.#entries.get(word) ?? this.#create(word);
    const posting = packed(slot, count);
    if (postings.length === 0 || postings[postings.length - 1]! < posting) postings.push(posting);
    else postings.splice(placeOf(postings, slot), 0, posting);
  }

  /** Takes a word out of a document. */
  remove(word: string, slot: number): void {
    const entry = this.#entries.get(word)!;
    entry.postings.splice(placeOf(entry.postings, slot), 1);
    if (entry.postings.length > 0) return;
    this.#entries.delete(word);
    this.#tree.delete(word);
    const left = this.#byStem.get(entry.stem)!.filter((one) => one !== entry);
    if (left.length > 0) this.#byStem.set(entry.stem, left);
    else this.#byStem.delete(entry.stem);
  }

  #create(word: string): Entry {
    const entry: Entry = { word, stem: stemOf(word), postings: [] };
    this.#entries.set(word, entry);
    this.#tree.set(word, entry);
    const kin = this.#byStem.get(entry.stem);
    if (kin) kin.push(entry);
    else this.#byStem.set(entry.stem, [entry]);
    return entry;
  }
}

/** Where the posting of a slot is or has to go. */
function placeOf(postings: readonly number[], slot: number): number {
  let low = 0;
  let high = postings.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (slotOf(postings[middle]!) < slot) low = middle + 1;
    else high = middle;
  }
  return low;
}

function editsAllowed(word: string): number {
  if (word.length < 4 || word.length > 40 || /\p{N}/u.test(word)) return 0;
  return word.length < 8 ? 1 : 2;
}

/** A word with each two neighbours exchanged in turn. */
function exchanged(word: string): string[] {
  const letters = [...word];
  return letters.slice(1).map((letter, before) =>
    letters
      .with(before, letter)
      .with(before + 1, letters[before]!)
      .join(''),
  );
}
