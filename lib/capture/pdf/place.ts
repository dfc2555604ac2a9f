/** A rectangle on a page as it is seen, in points (1/72 inch) from the page's top left corner: RFC 8118's viewrect. */
export interface Rect {
  left: number;
  top: number;
  width: number;
  height: number;
}

/** A place in a PDF: a page, counted from 1, and a part of it. */
export interface PdfPlace {
  page: number;
  rect: Rect | null;
}

/** The fragment that names a place, after RFC 8118: `page=3&viewrect=72,100.5,200,40`. */
export function fragmentOf({ page, rect }: PdfPlace): string {
  if (!rect) return `page=${page}`;
  return `page=${page}&viewrect=${[rect.left, rect.top, rect.width, rect.height].map(tenths).join(',')}`;
}

/** The place that a fragment names; null where it names no page. A rectangle that is none is passed over. */
export function placeOf(fragment: string): PdfPlace | null {
  let place: PdfPlace | null = null;
  // RFC 8118: parameters are apart by & or #, and are carried out from left to right.
  for (const parameter of fragment.replace(/^#/, '').split(/[&#]/)) {
    const [name, value = ''] = parameter.split('=');
    if (name === 'page' && /^[1-9]\d{0,5}$/.test(value)) place = { page: Number(value), rect: null };
    if (name === 'viewrect' && place) place = { ...place, rect: rectOf(value) };
  }
  return place;
}

function rectOf(value: string): Rect | null {
  const numbers = value.split(',');
  if (numbers.length !== 4 || !numbers.every((number) => /^-?\d{1,6}(\.\d{1,6})?$/.test(number))) return null;
  const [left, top, width, height] = numbers.map(Number) as [number, number, number, number];
  return width > 0 && height > 0 ? { left, top, width, height } : null;
}

const tenths = (number: number): number => Math.round(number * 10) / 10;

/** The smallest rectangle around all of them; null around none. */
export function around(rects: readonly Rect[]): Rect | null {
  if (rects.length === 0) return null;
  const left = Math.min(...rects.map((rect) => rect.left));
  const top = Math.min(...rects.map((rect) => rect.top));
  const right = Math.max(...rects.map((rect) => rect.left + rect.width));
  const bottom = Math.max(...rects.map((rect) => rect.top + rect.height));
  return { left, top, width: right - left, height: bottom - top };
}

/** Whether the middle of `inner` lies in `outer`. */
export function holds(outer: Rect, inner: Rect): boolean {
  const x = inner.left + inner.width / 2 - outer.left;
  const y = inner.top + inner.height / 2 - outer.top;
  return x >= 0 && x <= outer.width && y >= 0 && y <= outer.height;
}
