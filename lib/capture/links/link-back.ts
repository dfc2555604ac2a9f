import type { Selector } from '#lib/model/selector.ts';
import { momentUrl, parseMoment } from './media-fragment.ts';
import { parsePdfFragment, pdfUrl } from './pdf-fragment.ts';
import { textFragment } from './text-fragment.ts';

/** The address that leads back to a clip's place: a moment, a page of a PDF, a passage, or the source as a whole. */
export function linkBack({ url, selectors }: { url: string; selectors: readonly Selector[] }): string {
  for (const selector of selectors) {
    const link = selector.type === 'FragmentSelector' ? fragmentLink(url, selector.value) : null;
    if (link !== null) return link;
  }
  const quote = selectors.find((each) => each.type === 'TextQuoteSelector');
  return quote ? textFragment(url, quote) : url;
}

/** What a fragment means shows in its own syntax: only a PDF has pages, only a recording has time. */
function fragmentLink(url: string, value: string): string | null {
  const place = parsePdfFragment(value);
  if (place) return pdfUrl(url, place);
  const moment = parseMoment(value);
  return moment && momentUrl(url, moment);
}
