import { type ItemMemory, left } from './memory.ts';
import { type Weights, meanChance, weightsOf } from './offset.ts';
import type { StudyClock } from './study-time.ts';

/**
 * Chance of full marks, 0 to 1, at any moment (epoch ms), past ones too: with the practice that there had been by
 * then, and with what is known today of how hard the item is. Null before it was written.
 * @param weights of the item's offset, where they are at hand
 */
export function chanceThen(
  { at: seen, modelAt, decays, offset }: ItemMemory,
  clock: StudyClock,
  at: number,
  weights: Weights = weightsOf(offset),
): number | null {
  if (seen[0]! > at) return null;
  const moment = clock.seconds(at);
  let strength = 0;
  for (let i = 0; i < seen.length && seen[i]! <= at; i++) strength += left(moment - modelAt[i]!, decays[i]!);
  return meanChance(weights, strength);
}

/**
 * What is to be expected of several items together: the part of their marks, by moment as chanceThen has it. Items
 * count from when they were written; null before the first.
 */
export function partThen(
  items: readonly { memory: ItemMemory; marks: number }[],
  clock: StudyClock,
): (at: number) => number | null {
  const weighed = items.map((one) => ({ ...one, weights: weightsOf(one.memory.offset) }));
  return (at) => {
    let [got, outOf] = [0, 0];
    for (const { memory, marks, weights } of weighed) {
      const chance = chanceThen(memory, clock, at, weights);
      if (chance === null) continue;
      got += chance * marks;
      outOf += marks;
    }
    return outOf === 0 ? null : got / outOf;
  };
}
