import type { Id } from '#lib/model/basics.ts';

/** Another topic's item may go first where it has at least this part of the gain. Our choice. */
export const SWITCH_RATIO = 0.5;

/** What the queue needs to know of an item. */
export interface Queued {
  item: { id: Id; topicId: Id };
  /** What practising it now is worth: any finite number. */
  gain: number;
}

/**
 * What comes next, of many items: the best first but with topics mixed, so that no two of a topic come in a row where
 * an item of another has at least SWITCH_RATIO of the gain. No item comes twice, unless it is put back.
 *
 * Ranking is done once; after that an item costs a look at the best of each topic.
 */
export class ItemQueue<T extends Queued> {
  /** By topic, the worst first: the next one is at the end. */
  readonly #topics = new Map<Id, T[]>();
  readonly #given = new Set<Id>();
  #lastTopic: Id | null = null;

  /** @param ranked the best first; of one that comes twice the first counts */
  constructor(ranked: Iterable<T>) {
    const seen = new Set<Id>();
    for (const one of ranked) {
      if (seen.has(one.item.id)) continue;
      seen.add(one.item.id);
      const topic = this.#topics.get(one.item.topicId);
      if (topic) topic.push(one);
      else this.#topics.set(one.item.topicId, [one]);
    }
    for (const topic of this.#topics.values()) topic.reverse();
  }

  /** The next item, which is taken out; null when none is left. */
  next(): T | null {
    const best = this.#best(null);
    if (!best) return null;
    const other = best.item.topicId === this.#lastTopic ? this.#best(this.#lastTopic) : null;
    const chosen = other && other.gain >= best.gain * SWITCH_RATIO ? other : best;
    this.#topics.get(chosen.item.topicId)!.pop();
    this.#given.add(chosen.item.id);
    this.#lastTopic = chosen.item.topicId;
    return chosen;
  }

  /** Put an item back that was missed, or add a new one, with the gain that it has by now. */
  putBack(one: T): void {
    this.#given.delete(one.item.id);
    this.#insert(one);
  }

  /** Give an item its gain anew, as when an attempt came from elsewhere. Nothing where it was given out already. */
  update(one: T): void {
    if (this.#given.has(one.item.id)) return;
    this.#insert(one);
  }

  #insert(one: T): void {
    const topic = this.#topics.get(one.item.topicId) ?? [];
    this.#topics.set(one.item.topicId, topic);
    const before = topic.findIndex((other) => other.item.id === one.item.id);
    if (before >= 0) topic.splice(before, 1);
    const place = topic.findIndex((other) => inOrder(one, other) > 0);
    topic.splice(place < 0 ? topic.length : place, 0, one);
  }

  /** The best item, of any topic but one. */
  #best(but: Id | null): T | null {
    let best: T | null = null;
    for (const [id, topic] of this.#topics) {
      const one = topic.at(-1);
      if (id !== but && one && (!best || inOrder(one, best) < 0)) best = one;
    }
    return best;
  }
}

/** Below 0 where the first goes before the second: the larger gain first, equal ones by id. */
export const inOrder = (a: Queued, b: Queued): number => b.gain - a.gain || (a.item.id < b.item.id ? -1 : 1);
