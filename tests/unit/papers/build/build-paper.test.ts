import { describe, expect, it } from 'vitest';
import { buildPaper, finish } from '#lib/papers/build/build-paper.ts';
import type { BuiltPaper } from '#lib/papers/build/built-paper.ts';
import type { PartOffer, PaperWish } from '#lib/papers/build/offer.ts';
import { HUNDREDTHS, targetsOf } from '#lib/papers/build/topic-marks.ts';
import { randomOffers, randomWish } from './pools.ts';
import { allAlike, type SecondModel, secondOptimum, worth } from './second-solver.ts';

const POOLS = 320;
/** Its check, by both solvers, takes more than a minute (exactly 180 marks of 36 parts, in little time): left out, and not counted. */
const TOO_LONG = 28;

function secondModel(offers: readonly PartOffer[], wish: PaperWish): SecondModel {
  const targets = new Map([...targetsOf(wish)].map(([topic, each]) => [topic, each / HUNDREDTHS]));
  return { offers, wish, targets, alike: allAlike(offers) };
}

/** That a paper keeps to what it says it keeps to, from the offers alone. */
function expectKept({ offers, alike }: SecondModel, paper: BuiltPaper) {
  const places = paper.parts!.map((id) => offers.findIndex((offer) => offer.id === id));
  const chosen = places.map((place) => offers[place]!);
  const { kept } = paper;
  const marks = chosen.reduce((sum, each) => sum + each.marks, 0);
  const minutes = chosen.reduce((sum, each) => sum + each.minutes, 0);
  expect(new Set(places).size).toBe(places.length);
  expect(marks).toBe(paper.marks);
  expect(minutes).toBeCloseTo(paper.minutes, 6);
  expect(Math.abs(marks - kept.marks)).toBeLessThanOrEqual(kept.marksTolerance);
  if (kept.minutes !== null) expect(minutes).toBeLessThanOrEqual(kept.minutes + 1e-6);
  for (const [one, other] of alike) expect(places.includes(one) && places.includes(other)).toBe(false);
  for (const { together, questionId } of chosen.filter((each) => each.together)) {
    const all = offers.filter((each) => each.together && each.questionId === questionId);
    expect(all.every((each) => chosen.includes(each))).toBe(together);
  }
  for (const { daysUnseen } of chosen)
    expect(daysUnseen ?? Infinity).toBeGreaterThanOrEqual(kept.notSeenForDays);
  return chosen;
}

/** That a paper is as good as the second solver's, in both stages. */
function expectBest(model: SecondModel, paper: BuiltPaper): void {
  const chosen = expectKept(model, paper);
  const kept = { ...model, wish: paper.kept };
  expect(paper.deviation).toBeCloseTo(secondOptimum(kept, 'deviation')!, 4);
  const unseen = chosen.reduce((sum, each) => sum + worth(each), 0);
  expect(unseen).toBeCloseTo(secondOptimum(kept, 'value', paper.deviation)!, 4);
}

/** That the nearest values of what stands in the way are the second solver's. */
function expectNearest(model: SecondModel, paper: BuiltPaper): void {
  const { wish } = model;
  const off = secondOptimum(model, 'marks off');
  const marks = paper.inTheWay.find((each) => each.wish === 'marks');
  expect(marks ? Math.abs(marks.nearest - wish.marks) : null).toBe(off === null ? null : Math.round(off));
  const minutes = paper.inTheWay.find((each) => each.wish === 'minutes');
  const fewest = wish.minutes === null ? null : secondOptimum(model, 'minutes');
  if (fewest === null) expect(minutes).toBeUndefined();
  else expect(minutes!.nearest).toBeCloseTo(fewest, 4);
  const days = paper.inTheWay.find((each) => each.wish === 'days');
  const possible = [...new Set(model.offers.map(({ daysUnseen }) => daysUnseen ?? Infinity))]
    .filter((each) => each < wish.notSeenForDays)
    .sort((a, b) => b - a)
    .find(
      (each) => secondOptimum({ ...model, wish: { ...wish, notSeenForDays: each } }, 'deviation') !== null,
    );
  expect(days?.nearest).toBe(possible);
}

describe('building a paper, against HiGHS (the npm package highs)', () => {
  const counts = { met: 0, notMet: 0 };
  it.each(Array.from({ length: POOLS / 20 }, (_, at) => at))(
    'finds its optimum: pools of block %i',
    (block) => {
      for (let seed = block * 20; seed < block * 20 + 20; seed++) {
        if (seed === TOO_LONG) continue;
        const offers = randomOffers({ parts: 8 + (seed % 33), topics: 3 + (seed % 4), mixed: 30 }, seed);
        const wish = randomWish(offers, seed, seed % 2 === 0);
        const model = secondModel(offers, wish);
        const paper = finish(buildPaper(offers, wish));
        expect(paper.status).toBe('proven');
        const possible = secondOptimum(model, 'deviation') !== null;
        counts[possible ? 'met' : 'notMet']++;
        expect(paper.inTheWay.length === 0 && paper.parts !== null).toBe(possible);
        if (!possible && !paper.allInTheWay) expectNearest(model, paper);
        if (paper.parts) expectBest(model, paper);
      }
    },
  );

  it('has met both kinds of pools', () => {
    expect(counts.met + counts.notMet).toBe(POOLS - 1);
    expect(Math.min(counts.met, counts.notMet)).toBeGreaterThan(POOLS / 10);
  });
});
