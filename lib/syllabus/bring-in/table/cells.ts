import type { ShareUnit } from '#lib/model/topic.ts';
import { groupName, readGroup } from '../../outline/group.ts';

/** The number that a cell holds; the middle of a range such as "10–15 %". Null where it holds none, or several. */
export function cellNumber(cell: string): number | null {
  const numbers = (cell.match(/\d+(?:[.,]\d+)?/g) ?? []).map((one) => Number(one.replace(',', '.')));
  const [first, second] = numbers;
  if (first === undefined || numbers.length > 2 || /^\s*[-−]\s*\d/.test(cell)) return null;
  if (second === undefined) return first;
  return /\d\s*%?\s*(?:-|–|to)\s*\d/.test(cell) ? (first + second) / 2 : null;
}

const EVERYONE =
  /^(?:|all|both|any|everyone|common|no|none|-|–|—|(?:[a-z]{1,10} ?(?:\/|\+|&|and|,) ?)+[a-z]{1,10})$/i;
const LETTERS: Readonly<Record<string, string>> = { h: 'Higher tier', f: 'Foundation tier' };

/** The tier or option that a cell names; empty where it is for everyone. */
export function cellGroup(cell: string, heading: string): string {
  const written = cell.replace(/\s+only$/i, '').trim();
  if (EVERYONE.test(written)) return '';
  if (/tier/i.test(heading) && LETTERS[written.toLowerCase()]) return LETTERS[written.toLowerCase()]!;
  // In a column of options, "B" is option B; ticks and crosses say nothing of their own.
  if (/^(?:[A-Z]|\d{1,2})$/.test(written) && /option/i.test(heading)) return `Option ${written}`;
  if (/^(?:x|y|yes|✓|✔)$/i.test(written)) return groupName(heading);
  return readGroup(`X (${written})`).group || groupName(written);
}

/** In which unit a table gives shares: the one with most numbers; per cent, then marks, then hours where it is even. */
export const SHARE_UNITS: readonly ShareUnit[] = ['percent', 'marks', 'hours', 'parts'];
