import { dataOf, textIn } from '../linked-data.ts';
import { firstRead, metas } from './meta.ts';

/** Open Graph, the citation names of scholarly pages, and Dublin Core in its spellings. */
const NAMES = [
  'article:published_time',
  'citation_publication_date',
  'citation_date',
  'dc.date.issued',
  'dcterms.issued',
  'dc.date',
];

const MARKS = '[itemprop~="datePublished"], time[pubdate], [class*="byline" i] time';

/**
 * When the page says that it was published: a day, a month or a year of ISO 8601, as much of it as can be read for
 * sure; empty where it does not say.
 */
export function publishedOf(doc: Document): string {
  const marked = [...doc.querySelectorAll(MARKS)].map(
    (mark) => mark.getAttribute('content') ?? mark.getAttribute('datetime') ?? mark.textContent,
  );
  const inData = dataOf(doc, ({ datePublished }) => textIn(datePublished));
  return firstRead([...metas(doc, ...NAMES), inData, ...marked], isoDate);
}

/** Of a date in numbers, year first, whatever is between them; of any other only its year, since 3/4 is two days. */
function isoDate(text: string): string {
  const found = /^\s*([1-9]\d{3})(?:[-/.](\d\d?)(?:[-/.](\d\d?)(?!\d))?)?(?!\d)/.exec(text);
  const [, year, month, day] = found ?? [];
  if (!year) return /\b(1[5-9]|20)\d\d\b/.exec(text)?.[0] ?? '';
  const parts = [year];
  if (isWithin(month, 12)) parts.push(month!.padStart(2, '0'));
  if (parts[1] && isWithin(day, 31)) parts.push(day!.padStart(2, '0'));
  return parts.join('-');
}

const isWithin = (number: string | undefined, last: number): boolean =>
  Number(number) >= 1 && Number(number) <= last;
