/** Units of one gram. */
const SIZE = 8;
/** Every so many-th place of the text is listed. */
export const STEP = 4;
/** A gram that stands in more places tells none of them. */
const MOST = 64;

/** What a text must have for each of its places to be found by one of its grams. */
export const SHORTEST_LISTED = SIZE + STEP - 1;

/** Where short runs of a text stand in it: a hash table of every fourth place, in flat arrays. */
export class Grams {
  readonly #codes: Uint16Array;
  readonly #first: Int32Array;
  readonly #next: Int32Array;
  readonly #shift: number;

  constructor(codes: Uint16Array) {
    this.#codes = codes;
    const places = Math.max(0, Math.ceil((codes.length - SIZE + 1) / STEP));
    const bits = Math.max(8, 32 - Math.clz32(places * 2));
    this.#shift = 32 - bits;
    this.#first = new Int32Array(1 << bits).fill(-1);
    this.#next = new Int32Array(places);
    // Backwards, so that the places of a gram come in the order of the text.
    for (let place = places - 1; place >= 0; place--) {
      const slot = hash(codes, place * STEP) >>> this.#shift;
      this.#next[place] = this.#first[slot]!;
      this.#first[slot] = place;
    }
  }

  /** The listed places of the gram that begins at `start` of other codes; null when they are too many to help. */
  places(codes: Uint16Array, start: number): number[] | null {
    const found: number[] = [];
    const slot = hash(codes, start) >>> this.#shift;
    for (let place = this.#first[slot]!; place >= 0; place = this.#next[place]!) {
      if (!this.#isAt(place * STEP, codes, start)) continue;
      if (found.length === MOST) return null;
      found.push(place * STEP);
    }
    return found;
  }

  #isAt(place: number, codes: Uint16Array, start: number): boolean {
    for (let each = 0; each < SIZE; each++)
      if (this.#codes[place + each] !== codes[start + each]) return false;
    return true;
  }
}

function hash(codes: Uint16Array, start: number): number {
  let mixed = 0;
  for (let each = start; each < start + SIZE; each++) mixed = Math.imul(mixed, 0x01000193) ^ codes[each]!;
  return Math.imul(mixed ^ (mixed >>> 15), 0x2c1b3c6d);
}

/** How many grams a text of so many units has. */
export const gramsIn = (length: number): number => Math.max(0, length - SIZE + 1);
