import type { Form } from './forms.ts';
import type { Scorer } from './scorer.ts';
import { PACK } from './vocabulary.ts';

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
    const scorer = this.#scorer;
    const best = this.#best;
    const here: number[] = [];
    const holding = forms.reduce((sum, { entry }) => sum + entry.postings.length, 0);
    const rarity = scorer.rarity(Math.min(holding, scorer.count));
    for (const { entry, tier, weight } of forms) {
      const base = isOptional ? 0 : COVER + tier * TIER_STEP;
      const weighted = rarity * weight;
      for (const posting of entry.postings) {
        const slot = Math.floor(posting / PACK);
        const rank = base + scorer.score(posting % PACK, slot, weighted);
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

  rankOf(slot: number): number {
    return this.#ranks[slot]!;
  }

  /** The slots that hold all the words or, where none does, those that hold some; of those that are wanted. */
  best(isWanted: (slot: number) => boolean): { slots: number[]; isComplete: boolean } {
    const holding = (words: number) =>
      this.#touched.filter((slot) => this.#ranks[slot]! >= words * COVER && isWanted(slot));
    const all = holding(this.#needed);
    return all.length > 0 || this.#needed < 2
      ? { slots: all, isComplete: true }
      : { slots: holding(1), isComplete: false };
  }
}
