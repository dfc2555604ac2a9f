import type { Source } from '#lib/model/source.ts';

/** The words of a reference, in the language that it is written in. */
export interface ReferenceWords {
  noDate: string;
  availableAt: string;
  accessed: string;
}

type Cited = Pick<Source, 'url' | 'title' | 'site' | 'author' | 'published'>;

/**
 * A source as a reference in the common author–date form for web pages: `Author (year) Title. Site. Available at: URL
 * (Accessed: 3 March 2026).` It follows common practice, not the rules of one school or publisher, which differ in
 * details. Without an author the site stands first; a file without an address is cited without one.
 *
 * @param accessedDay calendar day on which it was read, as ISO 8601
 * @param locale BCP 47 tag for the day's spelling
 */
export function referenceOf(
  { url, title, site, author, published }: Cited,
  accessedDay: string,
  words: ReferenceWords,
  locale = 'en-GB',
): string {
  const first = author || site;
  const year = published.slice(0, 4) || words.noDate;
  const name = title === first ? '' : title;
  const where = site === first ? '' : site;
  const address = /^https?:/.test(url) ? `${words.availableAt}: ${url} ` : '';
  const read = `(${words.accessed}: ${dayInWords(accessedDay, locale)}).`;
  return [`${first} (${year})`.trim(), closed(name), closed(where), address + read].filter(Boolean).join(' ');
}

/** With a full stop behind it, unless it ends a sentence already. */
function closed(text: string): string {
  return text === '' || /[.?!\u3002\uff1f\uff01\u2026]$/.test(text) ? text : `${text}.`;
}

/** A day, month or year of ISO 8601 as people write it: "3 March 2026", "March 2026", "2026". */
export function dayInWords(date: string, locale = 'en-GB'): string {
  const [year, month, day] = date.split('-').map(Number);
  if (!year) return date;
  const format = new Intl.DateTimeFormat(locale, {
    timeZone: 'UTC',
    year: 'numeric',
    ...(month ? { month: 'long' as const } : {}),
    ...(day ? { day: 'numeric' as const } : {}),
  });
  return format.format(daysTo(year, month ?? 1, day ?? 1) * 86_400_000);
}

/** Days from 1 January 1970 in the Gregorian calendar. */
function daysTo(year: number, month: number, day: number): number {
  const isEarly = month <= 2;
  // Counted from March, so that a leap day is the last of its year.
  const years = isEarly ? year - 1 : year;
  const inYear = Math.floor((153 * (month + (isEarly ? 9 : -3)) + 2) / 5) + day - 1;
  const leaps = Math.floor(years / 4) - Math.floor(years / 100) + Math.floor(years / 400);
  return 365 * years + leaps + inYear - 719_468;
}
