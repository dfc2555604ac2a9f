import { unit } from './vector.ts';
import shipped from '#assets/match/word-vectors.json' with { type: 'json' };

/**
 * What two bits of a component stand for: the levels at which a normal distribution loses least (Max 1960,
 * "Quantizing for minimum distortion", IRE Trans. Inform. Theory 6, 7-12: 0.4528 and 1.510), as whole numbers.
 */
const LEVELS = [-10, -3, 3, 10];
/** Rarities are shipped in tenths. */
const RARITY_UNIT = 10;

export const DIMENSIONS = shipped.dimensions;

/**
 * Vectors of stems, from which texts can be compared that share no word, and how rare each stem is in English.
 * Made by tests/tools/match-data/make-vectors.ts; see assets/match/README.md.
 */
class WordVectors {
  readonly #places = new Map(shipped.stems.split(' ').map((stem, place) => [stem, place]));
  readonly #rarities = bytesOf(shipped.rarities);
  readonly #components = unpacked(bytesOf(shipped.vectors));
  readonly #scale = scalesOf(this.#components);
  #general: Float32Array | undefined;

  /** How rare a stem is in general English, from 0 to 1: 1 for one that is not among the commonest. */
  rarityOf(stem: string): number {
    const place = this.#places.get(stem);
    return place === undefined ? 1 : this.#rarities[place]! / RARITY_UNIT / shipped.mostRare;
  }

  /** Where English texts stand on average, at length 1: the mean of all stems, each as often as it is met. */
  general(): Float32Array {
    return (this.#general ??= this.#meanOfAll());
  }

  #meanOfAll(): Float32Array {
    const sum = new Float32Array(DIMENSIONS);
    for (const stem of this.#places.keys()) {
      const rarity = this.rarityOf(stem);
      this.addTo(sum, stem, Math.exp(-rarity * shipped.mostRare));
    }
    return unit(sum);
  }

  /** Adds the stem's vector to a vector, at a length of its rarity times a weight; one without a vector adds nothing. */
  addTo(vector: Float32Array, stem: string, weight: number): void {
    const place = this.#places.get(stem);
    if (place === undefined) return;
    const factor = weight * this.#scale[place]! * this.rarityOf(stem);
    const components = this.#components;
    const start = place * DIMENSIONS;
    for (let k = 0; k < DIMENSIONS; k++) vector[k]! += factor * components[start + k]!;
  }

  /** The part of a stem's vector, as addTo adds it with a weight of 1, along a vector. */
  along(vector: Float32Array, stem: string): number {
    const place = this.#places.get(stem);
    if (place === undefined) return 0;
    const start = place * DIMENSIONS;
    let sum = 0;
    for (let k = 0; k < DIMENSIONS; k++) sum += vector[k]! * this.#components[start + k]!;
    return sum * this.#scale[place]! * this.rarityOf(stem);
  }
}

let loaded: WordVectors | undefined;

/** The shipped vectors, unpacked when first asked for. */
export const wordVectors = (): WordVectors => (loaded ??= new WordVectors());

function bytesOf(base64: string): Uint8Array {
  const characters = atob(base64);
  const bytes = new Uint8Array(characters.length);
  for (let i = 0; i < bytes.length; i++) bytes[i] = characters.charCodeAt(i);
  return bytes;
}

function unpacked(bytes: Uint8Array): Int8Array {
  const components = new Int8Array(bytes.length * 4);
  for (let i = 0; i < bytes.length; i++) {
    for (let k = 0; k < 4; k++) components[i * 4 + k] = LEVELS[(bytes[i]! >> (2 * k)) & 3]!;
  }
  return components;
}

/** What each vector is multiplied by to be of length 1. */
function scalesOf(components: Int8Array): Float32Array {
  const scales = new Float32Array(components.length / DIMENSIONS);
  for (let i = 0; i < scales.length; i++) {
    let sum = 0;
    for (let k = 0; k < DIMENSIONS; k++) sum += components[i * DIMENSIONS + k]! ** 2;
    scales[i] = 1 / Math.sqrt(sum);
  }
  return scales;
}
