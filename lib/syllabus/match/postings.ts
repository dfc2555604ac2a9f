import { LENGTH_DISCOUNT, PAIR_WEIGHT, TOPIC_SATURATION } from './weights.ts';

/** The topics that have a term, by their places, in order, and its weighted count in each. */
interface Posting {
  places: number[];
  counts: number[];
}

/** Where terms stand and how often: weighted counts for each topic, which change as passages are tagged. */
export class Postings {
  readonly #byTerm = new Map<string, Posting>();
  readonly #lengths: Float64Array;
  /** What the length of each topic makes of TOPIC_SATURATION; worked out when asked for after a change. */
  #saturation: Float64Array | undefined;

  constructor(topicCount: number) {
    this.#lengths = new Float64Array(topicCount);
  }

  /** Adds (or with a negative weight takes away) a term of a topic. A pair of words adds nothing to the length. */
  add(place: number, term: string, weight: number): void {
    let posting = this.#byTerm.get(term);
    if (!posting) this.#byTerm.set(term, (posting = { places: [], counts: [] }));
    const { places, counts } = posting;
    const at = firstFrom(places, place);
    if (places[at] !== place) {
      places.splice(at, 0, place);
      counts.splice(at, 0, weight);
    } else {
      counts[at]! += weight;
      if (counts[at]! < LEAST) this.#drop(term, posting, at);
    }
    if (!isPair(term)) this.#lengths[place]! += weight;
    this.#saturation = undefined;
  }

  /** Adds what a term says for each topic that has it, times a weight, to the topics' scores. */
  addEvidence(scores: Float64Array, term: string, weight: number): void {
    const posting = this.#byTerm.get(term);
    if (!posting) return;
    const saturation = this.#upToDate();
    const factor = weight * this.#idfOf(term, posting) * (TOPIC_SATURATION + 1);
    posting.places.forEach((place, i) => {
      const count = posting.counts[i]!;
      scores[place]! += (factor * count) / (count + saturation[place]!);
    });
  }

  /** What a term says for one topic: BM25's part of the score. */
  evidence(term: string, place: number): number {
    const posting = this.#byTerm.get(term);
    if (!posting) return 0;
    const at = firstFrom(posting.places, place);
    if (posting.places[at] !== place) return 0;
    const count = posting.counts[at]!;
    const saturated = (count * (TOPIC_SATURATION + 1)) / (count + this.#upToDate()[place]!);
    return this.#idfOf(term, posting) * saturated;
  }

  /** How telling a term is: BM25's inverse document frequency, in the form that never falls below zero. */
  #idfOf(term: string, { places }: Posting): number {
    const idf = Math.log(1 + (this.#lengths.length - places.length + 0.5) / (places.length + 0.5));
    return isPair(term) ? idf * PAIR_WEIGHT : idf;
  }

  #drop(term: string, { places, counts }: Posting, at: number): void {
    places.splice(at, 1);
    counts.splice(at, 1);
    if (places.length === 0) this.#byTerm.delete(term);
  }

  #upToDate(): Float64Array {
    if (this.#saturation) return this.#saturation;
    const mean = this.#lengths.reduce((sum, length) => sum + length, 0) / this.#lengths.length;
    const discountOf = (length: number) => 1 - LENGTH_DISCOUNT + (LENGTH_DISCOUNT * length) / mean;
    return (this.#saturation = this.#lengths.map((length) => TOPIC_SATURATION * discountOf(length)));
  }
}

/** What may be left of a count after adding and taking away the same, by rounding. */
const LEAST = 1e-6;

export const isPair = (term: string): boolean => term.includes(' ');

/** Where a number stands in an ascending list, or would stand. */
function firstFrom(list: readonly number[], value: number): number {
  // While an index is made topics come in order.
  if (list.length === 0 || list[list.length - 1]! < value) return list.length;
  let [low, high] = [0, list.length - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (list[middle]! < value) low = middle + 1;
    else high = middle;
  }
  return low;
}
