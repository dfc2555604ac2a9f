import type { Reason } from '#lib/model/next-up.ts';
import type { Ranked } from '#lib/recall/next-item.ts';
import { t } from '../text.ts';

const DAY_MS = 86_400_000;

/** The numbers behind an item's place, to keep with it. `now` is the moment that it was ranked for, in epoch ms. */
export function reasonOf({ why, chanceExamNow, chanceExamAfter }: Ranked, now: number): Reason {
  return {
    examMarks: why.examMarks,
    chanceIfLeft: chanceExamNow,
    chanceIfAsked: chanceExamAfter,
    seconds: why.seconds,
    aimAt: Math.round(now + why.daysAhead * DAY_MS),
    isForExam: why.isForExam,
  };
}

const format = (value: number, digits: number) =>
  value.toLocaleString(undefined, { maximumFractionDigits: digits });

/**
 * Why this item comes now, in a sentence with its numbers.
 * @param now epoch ms
 */
export function whySentence(reason: Reason, now: number): string {
  const { examMarks, chanceIfLeft, chanceIfAsked, seconds, aimAt, isForExam } = reason;
  const [left, asked] = [format(chanceIfLeft * 100, 0), format(chanceIfAsked * 100, 0)];
  const isGain = chanceIfAsked > chanceIfLeft && asked !== left;
  const name = isForExam
    ? isGain
      ? 'whyForExam'
      : 'whyForExamHolds'
    : isGain
      ? 'whyAhead'
      : 'whyAheadHolds';
  const days = Math.max(0, (aimAt - now) / DAY_MS);
  return t(name, format(examMarks, 1), left, asked, format(seconds, 0), format(days, 0));
}
