import type { Random } from './random.ts';

const LITTLE = 'the of and in is to a that for with as by are at on from it which be an'.split(' ');
const ONSETS = 'b br c cl d dr f fl g gr h l m n p pr r s st t tr v w'.split(' ');
const VOWELS = 'a e i o u ea ou ai'.split(' ');
const CODAS = 'n r l m t st nd rk x ss'.split(' ');
const ENDINGS = ['', '', '', 's', 'ing', 'ed', 'ation', 'ity', 'ness', 'al', 'ous', 'ly'];

/** Part of running English that its twenty or so commonest words make up, roughly. */
const LITTLE_PART = 0.35;

/**
 * Texts of made-up words with English endings and the little words between them: as long, as varied and as much work
 * for a stemmer as real ones. Some words come far more often than others, as in any language.
 */
export class Words {
  readonly #random: Random;
  readonly #stock: string[];

  constructor(random: Random, stock = 6000) {
    this.#random = random;
    this.#stock = Array.from({ length: stock }, () => this.#made());
  }

  /** A text of so many words, the first with a capital. */
  text(count: number): string {
    const words = Array.from({ length: count }, () => this.#word()).join(' ');
    return words[0]!.toUpperCase() + words.slice(1);
  }

  #word(): string {
    if (this.#random.next() < LITTLE_PART) return this.#random.pick(LITTLE);
    return this.#stock[Math.floor(this.#random.next() ** 3 * this.#stock.length)]!;
  }

  #made(): string {
    const random = this.#random;
    const parts = Array.from(
      { length: 1 + random.below(2) },
      () => random.pick(ONSETS) + random.pick(VOWELS),
    );
    return parts.join('') + random.pick(CODAS) + random.pick(ENDINGS);
  }
}
