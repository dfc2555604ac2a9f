import { addTo, dot, unit } from './vector.ts';
import { GENERAL_PART, MEAN_MEANING, OWN_MEANING } from './weights.ts';
import { DIMENSIONS, wordVectors } from './word-vectors.ts';

/** Cosines with the course as a whole. */
export interface NearnessToCourse {
  passage: number;
  /** What a passage of the course has on average, and what any English text has. */
  inside: number;
  outside: number;
}

/**
 * Where the topics stand in the space of meanings: each at the mean of its own words and of the passages tagged to
 * it, less what all of them have in common, since that says nothing about which one a passage belongs to.
 */
export class Meanings {
  readonly #own: Float32Array[];
  readonly #commonToTopics: Float32Array;
  readonly #tagged: { sum: Float32Array; count: number }[];
  readonly #allTagged = { sum: blank(), count: 0 };
  /** Worked out when asked for after a change. */
  #topics: Float32Array[] | undefined;
  #common = blank();

  /** @param own the meaning of each topic's own words, at length 1 */
  constructor(own: readonly Float32Array[]) {
    this.#commonToTopics = meanOf(own);
    this.#own = own.map((vector) => less(vector, this.#commonToTopics));
    this.#tagged = own.map(() => ({ sum: blank(), count: 0 }));
  }

  /** Adds the meaning of a passage tagged to a topic, or takes it away again (`times` -1). */
  tag(place: number, meaning: Float32Array, times: 1 | -1): void {
    for (const part of [this.#tagged[place]!, this.#allTagged]) {
      addTo(part.sum, meaning, times);
      part.count += times;
    }
    this.#topics = undefined;
  }

  /** How near a passage is to each topic: cosines, from -1 to 1; all 0 for a passage without known words. */
  nearness(meaning: Float32Array): Float64Array {
    const topics = this.#upToDate();
    if (meaning.every((x) => x === 0)) return new Float64Array(topics.length);
    const own = less(meaning, this.#common);
    return Float64Array.from(topics, (topic) => dot(topic, own));
  }

  /** How a passage stands to what all topics and tagged passages have in common. */
  toCourse(meaning: Float32Array): NearnessToCourse {
    this.#upToDate();
    const direction = unit(this.#common);
    return {
      passage: dot(direction, meaning),
      inside: dot(direction, this.#common),
      outside: GENERAL_PART * dot(direction, wordVectors().general()),
    };
  }

  /** How far a word, as it counts in a passage, points towards a topic. */
  pull(place: number, stem: string): number {
    return wordVectors().along(this.#upToDate()[place]!, stem);
  }

  #upToDate(): Float32Array[] {
    if (this.#topics) return this.#topics;
    const { sum, count } = this.#allTagged;
    this.#common = blank();
    addTo(this.#common, this.#commonToTopics, MEAN_MEANING / (MEAN_MEANING + count));
    addTo(this.#common, sum, 1 / (MEAN_MEANING + count));
    this.#topics = this.#own.map((own, place) => {
      const tagged = this.#tagged[place]!;
      const vector = blank();
      addTo(vector, own, OWN_MEANING);
      addTo(vector, tagged.sum);
      addTo(vector, this.#common, -tagged.count);
      return unit(vector);
    });
    return this.#topics;
  }
}

const blank = (): Float32Array<ArrayBuffer> => new Float32Array(DIMENSIONS);

function meanOf(vectors: readonly Float32Array[]): Float32Array {
  const sum = blank();
  for (const vector of vectors) addTo(sum, vector, 1 / vectors.length);
  return sum;
}

const less = (vector: Float32Array, common: Float32Array): Float32Array =>
  unit(vector.map((x, k) => x - common[k]!));
