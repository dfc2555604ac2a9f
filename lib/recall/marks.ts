import { type Judgement, judgementOf } from '#lib/model/attempt.ts';

/** One way to mark an answer. */
export interface Choice {
  marks: number;
  judgement: Judgement;
}

/**
 * The ways to mark an answer, fullest first. One mark can be had in full, in part (a half) or not at all; of
 * several, any whole number.
 * @param outOf marks there are: a whole number, at least 1
 * @throws RangeError for any other
 */
export function choicesOf(outOf: number): Choice[] {
  if (!Number.isInteger(outOf) || outOf < 1) throw new RangeError(`no way to mark out of ${outOf}`);
  const step = outOf === 1 ? 0.5 : 1;
  const count = outOf / step + 1;
  return Array.from({ length: count }, (_, i) => outOf - i * step).map((marks) => ({
    marks,
    judgement: judgementOf({ marks, outOf }),
  }));
}

/** Whether an answer out of so many marks can be given these. */
export const isChoice = (marks: number, outOf: number): boolean =>
  choicesOf(outOf).some((choice) => choice.marks === marks);
