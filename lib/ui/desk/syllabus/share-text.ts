import type { ShareUnit } from '#lib/model/topic.ts';
import { type TextName, t, tn } from '../../text.ts';

/** The units of shares, in the student's words. */
export const UNIT_NAMES = {
  percent: 'unitPercent',
  marks: 'unitMarks',
  hours: 'unitHours',
  parts: 'unitParts',
} as const satisfies Record<ShareUnit, TextName>;

/** A share with its unit: "20 %", "12 marks". */
export function shareText(share: number, unit: ShareUnit): string {
  if (unit === 'marks') return tn('marks', share);
  if (unit === 'hours') return tn('hours', share);
  const number = share.toLocaleString(undefined, { maximumFractionDigits: 1 });
  return t(unit === 'percent' ? 'sharePercent' : 'shareParts', number);
}
