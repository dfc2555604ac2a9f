/** A place in a PDF: its page from 1 on, and a rectangle of it in the page's units, from the top left corner. */
export interface PdfPlace {
  page: number;
  view?: { left: number; top: number; width: number; height: number };
}

/** A fragment after RFC 8118, 3: `page=3&viewrect=72,100,400,60`. */
export function pdfFragment({ page, view }: PdfPlace): string {
  if (!view) return `page=${page}`;
  return `page=${page}&viewrect=${[view.left, view.top, view.width, view.height].map(brief).join(',')}`;
}

/** No exponent: a viewer reads plain decimals only. */
const brief = (value: number): string => String(Number(value.toFixed(2)));

/** The place that a fragment names; null where it names no page. A rectangle that is none is left out. */
export function parsePdfFragment(fragment: string): PdfPlace | null {
  const pairs = new Map(
    fragment
      .replace(/^#/, '')
      .split('&')
      .map((pair) => [pair.slice(0, pair.indexOf('=')), pair.slice(pair.indexOf('=') + 1)]),
  );
  const page = pairs.get('page') ?? '';
  if (!/^[1-9]\d{0,8}$/.test(page)) return null;
  const [left, top, width, height, ...more] = (pairs.get('viewrect') ?? '').split(/,|%2C/i).map(toNumber);
  const isView = [left, top, width, height].every((side) => Number.isFinite(side)) && more.length === 0;
  return {
    page: Number(page),
    ...(isView ? { view: { left: left!, top: top!, width: width!, height: height! } } : {}),
  };
}

const toNumber = (text: string): number => (/^-?\d+(\.\d*)?$/.test(text) ? Number(text) : Number.NaN);

/** The address of a PDF at a place, in place of whatever fragment it had. */
export function pdfUrl(url: string, place: PdfPlace): string {
  return `${url.split('#')[0]}#${pdfFragment(place)}`;
}
