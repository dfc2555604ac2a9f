import { describe, expect, it } from 'vitest';
import { linkBack } from '#lib/capture/links/link-back.ts';
import { FRAGMENT_OF, type Selector } from '#lib/model/selector.ts';

const quote: Selector = { type: 'TextQuoteSelector', exact: 'Long waves outrun short ones.' };
const position: Selector = { type: 'TextPositionSelector', start: 4, end: 7 };
const fragment = (conformsTo: (typeof FRAGMENT_OF)[keyof typeof FRAGMENT_OF], value: string): Selector => ({
  type: 'FragmentSelector',
  conformsTo,
  value,
});

describe('linkBack', () => {
  it('leads to a passage by its words', () => {
    expect(linkBack({ url: 'https://sea.example/w#top', selectors: [position, quote] })).toBe(
      'https://sea.example/w#top:~:text=Long%20waves%20outrun%20short%20ones',
    );
  });

  // Source: W3C Web Annotation Data Model, 4.2.1 Fragment Selector: the example's value, "t=30,60".
  it('leads to a moment', () => {
    const selectors = [quote, fragment(FRAGMENT_OF.media, 't=30,60')];
    expect(linkBack({ url: 'https://sea.example/v.webm', selectors })).toBe(
      'https://sea.example/v.webm#t=30,60',
    );
  });

  // Source: RFC 8118, 3: page and viewrect, apart by an ampersand.
  it('leads to a page of a PDF', () => {
    const url = 'https://sea.example/notes.pdf#page=9';
    const page = fragment(FRAGMENT_OF.pdf, 'page=3');
    const view = fragment(FRAGMENT_OF.pdf, 'page=3&viewrect=72,100,200,40');
    expect(linkBack({ url, selectors: [quote, page] })).toBe('https://sea.example/notes.pdf#page=3');
    expect(linkBack({ url, selectors: [view] })).toBe(
      'https://sea.example/notes.pdf#page=3&viewrect=72,100,200,40',
    );
  });

  it('passes over a fragment that says nothing, and leads to the source when no selector helps', () => {
    const url = 'https://sea.example/v.webm';
    expect(linkBack({ url, selectors: [fragment(FRAGMENT_OF.media, 't=7,3'), position] })).toBe(url);
    expect(linkBack({ url, selectors: [fragment(FRAGMENT_OF.pdf, 'page=0')] })).toBe(url);
    expect(linkBack({ url, selectors: [] })).toBe(url);
  });
});
