import { buildPaper } from '#lib/papers/build/build-paper.ts';
import type { BuiltPaper } from '#lib/papers/build/built-paper.ts';
import type { PartOffer, PaperWish } from '#lib/papers/build/offer.ts';
import { HUNDREDTHS, targetsOf } from '#lib/papers/build/topic-marks.ts';
import { randomOffers } from '#tests/unit/papers/build/pools.ts';
import { allAlike, secondOptimum } from '#tests/unit/papers/build/second-solver.ts';
import { type Figure, figure } from './figure.ts';
import { median, took } from './timing.ts';

const PARTS = 1000;
const TOPICS = 12;
const POOLS = 20;
/** Pools that the second solver has as well: it can take ten seconds for one. */
const SECOND = 5;
/** After so long a search is stopped: what is not proven by then counts as missed. */
const STOP_MS = 4000;

/**
 * Papers of 80 marks in 84 minutes from 1,000 parts of 12 topics, a quarter of them of two topics, a tenth near copies:
 * the time until the optimum is proven, beside HiGHS (WebAssembly) on the same model, which is handed the near copies.
 */
export async function figures(): Promise<Figure[]> {
  const ours: number[] = [];
  const second: number[] = [];
  let proven = 0;
  for (let seed = 1; seed <= POOLS; seed++) {
    const offers = randomOffers({ parts: PARTS, topics: TOPICS }, seed);
    const wish = wishOf(seed);
    let paper: BuiltPaper | undefined;
    ours.push(await took(() => (paper = built(offers, wish))));
    if (paper!.status === 'proven') proven++;
    if (seed > SECOND) continue;
    const targets = new Map([...targetsOf(wish)].map(([topic, each]) => [topic, each / HUNDREDTHS]));
    const model = { offers, wish, targets, alike: allAlike(offers) };
    second.push(
      await took(() => {
        const deviation = secondOptimum(model, 'deviation')!;
        const worth = secondOptimum(model, 'value', deviation)!;
        console.log(
          `  pool ${seed}: ${paper!.status}, off by ${paper!.deviation}; HiGHS ${deviation.toFixed(2)}, ${worth}`,
        );
      }),
    );
  }
  const slowest = Math.max(...ours);
  console.log(`  proven ${proven} of ${POOLS}, slowest ${slowest.toFixed(0)} ms`);
  const against = { what: `HiGHS, ${SECOND} pools`, value: median(second) };
  return [
    figure({
      name: 'papers/build-1000-ms',
      value: median(ours),
      unit: 'ms',
      against,
      goal: { atMost: 2000 },
    }),
    figure({ name: 'papers/build-1000-worst-ms', value: slowest, unit: 'ms', goal: { atMost: 2000 } }),
    figure({
      name: 'papers/build-1000-proven-part',
      value: (100 * proven) / POOLS,
      unit: '%',
      goal: { atLeast: 100 },
    }),
  ];
}

function wishOf(seed: number): PaperWish {
  const shares = Array.from({ length: TOPICS }, (_, at) => [`topic-${at}`, 1 + ((at * 5) % 7)]);
  return {
    marks: 80,
    marksTolerance: 0,
    minutes: 84,
    shares: Object.fromEntries(shares) as Record<string, number>,
    notSeenForDays: 60,
    order: 'as offered',
    seed,
  };
}

/** The paper, stopped where it takes too long. */
function built(offers: readonly PartOffer[], wish: PaperWish): BuiltPaper {
  const stopAt = performance.now() + STOP_MS;
  const building = buildPaper(offers, wish);
  for (let step = building.next(); ; step = building.next(performance.now() > stopAt ? 'stop' : undefined))
    if (step.done) return step.value;
}
