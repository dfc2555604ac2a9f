import type { Ranked } from '#lib/recall/next-item.ts';
import { t } from '../text.ts';

const format = (value: number, digits: number) =>
  value.toLocaleString(undefined, { maximumFractionDigits: digits });

/** Why this item comes now, in a sentence with its numbers. */
export function whySentence({ why, chanceExamNow, chanceExamAfter }: Ranked): string {
  const name = why.isForExam ? 'whyForExam' : 'whyAhead';
  return t(
    name,
    format(why.examMarks, 1),
    format(chanceExamNow * 100, 0),
    format(chanceExamAfter * 100, 0),
    format(why.seconds, 0),
    format(why.daysAhead, 0),
  );
}
