import type { Form } from './forms.ts';
import type { Scorer } from './scorer.ts';
import { countOf, slotOf } from './vocabulary.ts';

/*
 * A rank is one number: how many of the words a document holds, then how exactly it holds them, then BM25+. The sum of
 * scores stays below TIER_STEP and the sum of tiers below COVER / TIER_STEP, for as many words as a query may have.
 */
const TIER_STEP = 2 ** 12;
const COVER = 2 ** 20;

/** Ranks documents, slot by slot, as the words of a query are added. */
export class Ranking {
  readonly #scorer: Scorer;
  readonly #ranks: Float64Array;
  readonly #best: Float64Array;
  /** Slots with a rank, each once. */
  readonly #touched: number[] = [];
  #needed = 0;

  constructor(scorer: Scorer) {
    this.#scorer = scorer;
    this.#ranks = new Float64Array(scorer.end);
    this.#best = new Float64Array(scorer.end);
  }

  /** Adds a word of the query by its forms: of those that a document holds, the best counts. */
  add(forms: readonly Form[], isOptional: boolean): void {
    if (!isOptional) this.#needed += 1;
    const { score, count } = this.#scorer;
    const best = this.#best;
    const here: number[] = [];
    const holding = forms.reduce((sum, { entry }) => sum + entry.postings.length, 0);
    const rarity = this.#scorer.rarity(Math.min(holding, count));
    for (const { entry, tier, weight } of forms) {
      const base = isOptional ? 0 : COVER + tier * TIER_STEP;
      const weighted = rarity * weight;
      for (const posting of entry.postings) {
        const slot = slotOf(posting);
        const rank = base + score(countOf(posting), slot, weighted);
        const before = best[slot]!;
        if (before === 0) here.push(slot);
        if (rank > before) best[slot] = rank;
      }
    }
    for (const slot of here) {
      if (this.#ranks[slot] === 0) this.#touched.push(slot);
      this.#ranks[slot]! += best[slot]!;
      best[slot] = 0;
    }
  }

  /**
   * Calls `visit` for each slot that holds all the words or, where it takes none of these, for each that holds some.
   * Gives whether they hold all.
   * @param visit gives whether it takes the slot
   */
  visit(visit: (slot: number, rank: number) => boolean): boolean {
    return this.#visitFrom(this.#needed, visit) || this.#needed < 2 || !this.#visitFrom(1, visit);
  }

  #visitFrom(words: number, visit: (slot: number, rank: number) => boolean): boolean {
    let isTaken = false;
    for (const slot of this.#touched) {
      const rank = this.#ranks[slot]!;
      if (rank >= words * COVER && visit(slot, rank)) isTaken = true;
    }
    return isTaken;
  }
}
