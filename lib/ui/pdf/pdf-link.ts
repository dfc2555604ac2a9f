import { browser } from 'wxt/browser';
import { type PdfPlace, fragmentOf, placeOf } from '#lib/capture/pdf/place.ts';
import type { Clip } from '#lib/model/clip.ts';
import { FRAGMENT_OF } from '#lib/model/selector.ts';
import { type Source, hasAddress } from '#lib/model/source.ts';

const PAGE = '/pdf.html' as '/desk.html';

/** The reader, empty: it asks for a file. */
export const pdfPageLink = (): string => browser.runtime.getURL(PAGE);

/** The reader on the PDF that a tab shows. */
export const pdfTabLink = (tabId: number): string => `${pdfPageLink()}#tab=${tabId}`;

/** Where in its PDF a clip is from; null when its selectors do not say. */
export function placeOfClip(clip: Pick<Clip, 'selectors'>): PdfPlace | null {
  for (const selector of clip.selectors)
    if (selector.type === 'FragmentSelector' && selector.conformsTo === FRAGMENT_OF.pdf)
      return placeOf(selector.value);
  return null;
}

/**
 * Where a clip of a PDF is opened at its passage: in the reader when the deck has the file, or when there is no other
 * way (the reader asks for the file then); else at its address, at the page (RFC 8118).
 */
export function pdfClipLink(clip: Pick<Clip, 'selectors'>, source: Source, isFileKept: boolean): string {
  const place = placeOfClip(clip);
  const fragment = place ? fragmentOf(place) : '';
  if (isFileKept || !hasAddress(source))
    return `${pdfPageLink()}#source=${source.id}${fragment && `&${fragment}`}`;
  return fragment ? `${source.url}#${fragment}` : source.url;
}

/** What the reader is opened on: a tab, a source of the deck, or nothing yet. */
export interface PdfStart {
  tabId: number | null;
  sourceId: string | null;
  place: PdfPlace | null;
}

/** Reads the part of the reader's address after `#`. */
export function startOf(hash: string): PdfStart {
  const parameters = new URLSearchParams(hash.replace(/^#/, ''));
  const tab = parameters.get('tab') ?? '';
  return {
    tabId: /^\d{1,15}$/.test(tab) ? Number(tab) : null,
    sourceId: parameters.get('source'),
    place: placeOf(hash),
  };
}
