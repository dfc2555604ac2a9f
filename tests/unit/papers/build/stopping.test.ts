import { expect, it } from 'vitest';
import { buildPaper, finish } from '#lib/papers/build/build-paper.ts';
import { randomOffers, randomWish } from './pools.ts';

const offers = randomOffers({ parts: 36, topics: 4, mixed: 30 }, 28);
const wish = randomWish(offers, 28, true);

it('says how far it is, and gives the best until then when it is stopped, not calling it proven', () => {
  const many = randomOffers({ parts: 300, topics: 6 }, 5);
  const wished = {
    ...wish,
    marks: 60,
    minutes: 55,
    notSeenForDays: 0,
    shares: { 'topic-1': 2, 'topic-2': 1 },
  };
  const building = buildPaper(many, wished);
  let step = building.next();
  while (!step.done && step.value.best === Infinity) step = building.next();
  if (step.done) throw new Error('It was done before it could be stopped');
  expect(step.value.bound).toBeLessThanOrEqual(step.value.best);
  const stopped = building.next('stop');
  if (!stopped.done) throw new Error('It went on');
  expect(stopped.value).toMatchObject({ status: 'cancelled', marks: 60, inTheWay: [] });
});

it('gives the same paper for a seed, and for some other seed another that is as good', () => {
  const pool = randomOffers({ parts: 200, topics: 4 }, 5);
  const built = (seed: number) =>
    finish(
      buildPaper(pool, { ...randomWish(pool, 7, false), marks: 60, minutes: null, notSeenForDays: 0, seed }),
    );
  const one = built(1);
  expect(built(1)).toEqual(one);
  const others = [2, 3, 4].map(built);
  expect(others.every(({ deviation }) => deviation === one.deviation)).toBe(true);
  expect(others.some(({ parts }) => parts!.join() !== one.parts!.join())).toBe(true);
});

it('puts parts topic by topic where wished', () => {
  const paper = finish(
    buildPaper(
      [
        {
          ...offers[0]!,
          id: 'a',
          topics: { tides: 1 },
          marks: 2,
          daysUnseen: null,
          together: false,
          text: 'Tide',
        },
        {
          ...offers[0]!,
          id: 'b',
          topics: { waves: 1 },
          marks: 2,
          daysUnseen: null,
          together: false,
          text: 'Wave',
        },
      ],
      {
        ...wish,
        marks: 4,
        minutes: null,
        notSeenForDays: 0,
        shares: { waves: 1, tides: 1 },
        order: 'by topic',
      },
    ),
  );
  expect(paper).toMatchObject({ status: 'proven', parts: ['b', 'a'], deviation: 0, inTheWay: [] });
});
