/** Random numbers that are the same in every run (mulberry32, a public-domain generator). */
export class Random {
  #state: number;

  constructor(seed: number) {
    this.#state = seed;
  }

  /** From 0 up to 1. */
  next(): number {
    this.#state = (this.#state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(this.#state ^ (this.#state >>> 15), 1 | this.#state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  }

  /** A whole number from 0 up to, not including, `end`. */
  below(end: number): number {
    return Math.floor(this.next() * end);
  }

  pick<T>(from: readonly T[]): T {
    return from[this.below(from.length)]!;
  }

  /** An id in the form of a random UUID: keys scattered as in a student's deck. */
  id(): string {
    const hex = () => this.below(65_536).toString(16).padStart(4, '0');
    return `${hex()}${hex()}-${hex()}-4${hex().slice(1)}-8${hex().slice(1)}-${hex()}${hex()}${hex()}`;
  }
}
