import type { FragmentSelector, Selector } from '#lib/model/selector.ts';
import { fragmentOf, placeOf } from '../pdf/place.ts';
import { MEDIA_FRAGMENTS, momentUrl, parseMoment } from './media-fragment.ts';
import { textFragment } from './text-fragment.ts';

/** The address that leads back to a clip's place: a moment, a page of a PDF, a passage, or the source as a whole. */
export function linkBack({ url, selectors }: { url: string; selectors: readonly Selector[] }): string {
  for (const selector of selectors) {
    const link = selector.type === 'FragmentSelector' ? fragmentLink(url, selector) : null;
    if (link !== null) return link;
  }
  const quote = selectors.find((each) => each.type === 'TextQuoteSelector');
  return quote ? textFragment(url, quote) : url;
}

function fragmentLink(url: string, { conformsTo, value }: FragmentSelector): string | null {
  if (conformsTo === MEDIA_FRAGMENTS) {
    const moment = parseMoment(value);
    return moment && momentUrl(url, moment);
  }
  const place = placeOf(value);
  return place && `${url.split('#')[0]}#${fragmentOf(place)}`;
}
