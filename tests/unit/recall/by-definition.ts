import { activation, chanceOfRecall, decays, NOISE, THRESHOLD } from '#lib/recall/activation.ts';
import type { Recalled } from '#lib/recall/memory.ts';
import { OFFSET_SD, OFFSETS } from '#lib/recall/offset.ts';
import { studyClock } from '#lib/recall/study-time.ts';

/** Chance of full marks at a moment, straight from the equations: slow, and written without the code that is quick. */
export function chanceByDefinition(writtenAt: number, attempts: readonly Recalled[], at: number): number {
  const inOrder = attempts.toSorted((a, b) => a.at - b.at || (a.id < b.id ? -1 : 1));
  const { seconds } = studyClock(inOrder.map((a) => a.at));
  const seen = decays(
    [Math.min(writtenAt, inOrder[0]?.at ?? writtenAt), ...inOrder.map((a) => a.at)].map(seconds),
  );
  const logs = OFFSETS.map((b) => {
    let log = -((b / OFFSET_SD) ** 2) / 2;
    for (const [i, attempt] of inOrder.entries()) {
      const z = (activation(seen.slice(0, i + 1), seconds(attempt.at)) + b - THRESHOLD) / NOISE;
      const fraction = attempt.marks / attempt.outOf;
      log += fraction * z - Math.max(0, z) - Math.log1p(Math.exp(-Math.abs(z)));
    }
    return log;
  });
  const highest = Math.max(...logs);
  const weights = logs.map((log) => Math.exp(log - highest));
  const sum = weights.reduce((a, b) => a + b, 0);
  const m = activation(seen, seconds(at));
  return OFFSETS.reduce((mean, b, i) => mean + (weights[i]! / sum) * chanceOfRecall(m + b), 0);
}
