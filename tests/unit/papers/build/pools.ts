import type { PartOffer, PaperWish } from '#lib/papers/build/offer.ts';
import { Random } from '#tests/bench/random.ts';

const WORDS =
  'salinity tide swell current density front upwelling gyre plankton sediment basin ridge trench estuary fetch wave period depth pressure rotation heat oxygen carbon nitrate layer mixing ice shelf slope canyon reef drift eddy storm surge buoy sonar depth phase group speed'.split(
    ' ',
  );

/** What a random pool is like. */
export interface PoolShape {
  parts: number;
  topics: number;
  /** How many in a hundred parts are near copies of an earlier one. */
  copies?: number;
  /** How many in a hundred parts belong to a question whose parts come together. */
  together?: number;
  /** How many in a hundred parts are of two topics. */
  mixed?: number;
}

/** Parts in the manner of earlier papers of "Foundation Oceanography", the same for the same seed. */
export function randomOffers(
  { parts, topics, copies = 10, together = 20, mixed = 25 }: PoolShape,
  seed: number,
): PartOffer[] {
  const random = new Random(seed);
  const offers: PartOffer[] = [];
  const rates = Array.from({ length: 5 }, () => 0.8 + random.below(9) / 10);
  let daysUnseen: number | null = null;
  for (let place = 0; offers.length < parts; place++) {
    // A paper's questions were seen on one day.
    if (place % 8 === 0) daysUnseen = random.below(4) === 0 ? null : random.below(500);
    const joined = random.below(100) < together;
    const size = 1 + random.below(4);
    for (let part = 0; part < size && offers.length < parts; part++) {
      const marks = 1 + random.below(12);
      const topic = `topic-${random.below(topics)}`;
      const other = `topic-${random.below(topics)}`;
      const split = random.below(100) < mixed && other !== topic;
      const weight = random.pick([0.5, 0.25, 0.4]);
      const copy = offers.length > 0 && random.below(100) < copies;
      offers.push({
        id: random.id(),
        questionId: `question-${place}`,
        together: joined,
        marks,
        minutes: Math.round(marks * rates[place % 5]! * 10) / 10,
        topics: split ? { [topic]: 1 - weight, [other]: weight } : { [topic]: 1 },
        daysUnseen: random.below(5) === 0 ? random.below(500) : daysUnseen,
        text: copy
          ? random.pick(offers).text
          : Array.from({ length: 12 }, () => random.pick(WORDS)).join(' ') + ` ${offers.length}`,
      });
    }
  }
  return offers;
}

/** A wish for a pool; `tight` ones often cannot be met. */
export function randomWish(offers: readonly PartOffer[], seed: number, tight: boolean): PaperWish {
  const random = new Random(seed);
  const all = offers.reduce((sum, { marks }) => sum + marks, 0);
  const marks = Math.max(
    1,
    Math.round(all * (tight ? 0.4 + random.next() * 0.8 : 0.15 + random.next() * 0.35)),
  );
  const topics = [...new Set(offers.flatMap((offer) => Object.keys(offer.topics)))].sort();
  const shares = topics.map((topic): [string, number] => [topic, random.below(6)]);
  return {
    marks,
    marksTolerance: random.pick([0, 0, 1, 3]),
    minutes: random.below(4) === 0 ? null : Math.round(marks * (tight ? 0.6 + random.next() * 0.8 : 1.3)),
    shares: Object.fromEntries([...shares, ['topic-none', 1]]),
    notSeenForDays: random.pick([0, 0, 14, 60]) * (tight ? 4 : 1),
    order: 'as offered',
    seed,
  };
}
