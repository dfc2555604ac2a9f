import { pairOf, plainText, termsOf } from './terms.ts';
import type { Stems } from './terms.ts';
import { LENGTH_DISCOUNT } from './weights.ts';

/** One field of all topics (say, their titles): how often each term stands in it, discounted by length. */
export class Field {
  readonly #counts: Map<string, number>[];
  readonly #lengths: Float64Array;
  readonly #stems: Stems;
  readonly #pairs: boolean;

  constructor(topicCount: number, stems: Stems, { pairs }: { pairs: boolean }) {
    this.#counts = Array.from({ length: topicCount }, () => new Map<string, number>());
    this.#lengths = new Float64Array(topicCount);
    this.#stems = stems;
    this.#pairs = pairs;
  }

  /** Adds a text to the topic at a place; a text without a place belongs to a topic that is not indexed. */
  add(place: number | undefined, text: string): void {
    const counts = place === undefined ? undefined : this.#counts[place];
    if (place === undefined || !counts) return;
    const terms = termsOf(plainText(text), this.#stems);
    this.#lengths[place] = (this.#lengths[place] ?? 0) + terms.length;
    terms.forEach((term, i) => {
      count(counts, term.stem);
      const pair = this.#pairs ? pairOf(terms[i - 1], term) : null;
      if (pair) count(counts, pair);
    });
  }

  /** Visits each term of each topic with its count, discounted by how long the field is beside the other topics'. */
  forEach(visit: (term: string, place: number, count: number) => void): void {
    const filled = this.#lengths.filter((length) => length > 0);
    const mean = filled.reduce((sum, length) => sum + length, 0) / filled.length;
    this.#counts.forEach((counts, place) => {
      const length = (this.#lengths[place] ?? 0) / mean;
      const discount = 1 - LENGTH_DISCOUNT + LENGTH_DISCOUNT * length;
      for (const [term, times] of counts) visit(term, place, times / discount);
    });
  }
}

const count = (counts: Map<string, number>, term: string): unknown =>
  counts.set(term, (counts.get(term) ?? 0) + 1);
