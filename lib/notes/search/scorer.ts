// BM25+ with the constants that MiniSearch 7 ships. Source: Lv & Zhai (2011), Lower-bounding term frequency
// normalization, CIKM 2011, 7-16.
const K = 1.2;
const B = 0.7;
const D = 0.5;

const FIRST_SLOTS = 1024;

/** What ranking needs to know of the documents: how many there are and how many different words each holds. */
export class Scorer {
  #lengths = new Float64Array(FIRST_SLOTS);
  #sum = 0;
  #count = 0;
  #end = 0;

  /** One more than the highest slot that was ever in use. */
  get end(): number {
    return this.#end;
  }

  get count(): number {
    return this.#count;
  }

  add(slot: number, length: number): void {
    if (slot >= this.#lengths.length) {
      const longer = new Float64Array(2 * slot);
      longer.set(this.#lengths);
      this.#lengths = longer;
    }
    this.#lengths[slot] = length;
    this.#sum += length;
    this.#count += 1;
    this.#end = Math.max(this.#end, slot + 1);
  }

  remove(slot: number): void {
    this.#sum -= this.#lengths[slot]!;
    this.#count -= 1;
    this.#lengths[slot] = 0;
  }

  /** How telling a word is that stands in so many documents. */
  rarity(documents: number): number {
    return Math.log(1 + (this.#count - documents + 0.5) / (documents + 0.5));
  }

  /** Gives what standing in a document counts, for a word of a rarity: a function of the slot and how often. */
  get score(): (times: number, slot: number, rarity: number) => number {
    const lengths = this.#lengths;
    const least = K * (1 - B);
    const byLength = (K * B * this.#count) / this.#sum;
    return (times, slot, rarity) =>
      rarity * (D + (times * (K + 1)) / (times + least + byLength * lengths[slot]!));
  }
}
