import { z } from 'zod';

/** W3C Web Annotation Data Model, TextQuoteSelector. */
export const TextQuoteSelector = z.object({
  type: z.literal('TextQuoteSelector'),
  exact: z.string().min(1),
  prefix: z.string().optional(),
  suffix: z.string().optional(),
});
export type TextQuoteSelector = z.infer<typeof TextQuoteSelector>;

/** W3C Web Annotation Data Model, TextPositionSelector: Unicode code points, zero-based, end exclusive. */
export const TextPositionSelector = z.object({
  type: z.literal('TextPositionSelector'),
  start: z.number().int().nonnegative(),
  end: z.number().int().nonnegative(),
});
export type TextPositionSelector = z.infer<typeof TextPositionSelector>;

/** W3C Web Annotation Data Model, XPathSelector, refined by a place in the text of the element it names. */
export const XPathSelector = z.object({
  type: z.literal('XPathSelector'),
  value: z.string().min(1).max(2000),
  refinedBy: TextPositionSelector.optional(),
});
export type XPathSelector = z.infer<typeof XPathSelector>;

/** W3C Web Annotation Data Model, RangeSelector: from one element's place to another's. */
export const RangeSelector = z.object({
  type: z.literal('RangeSelector'),
  startSelector: XPathSelector,
  endSelector: XPathSelector,
});
export type RangeSelector = z.infer<typeof RangeSelector>;

/** What a fragment conforms to, as the W3C model lists them: Media Fragments URI, and PDF (whose RFC 8118 replaced 3778). */
export const FRAGMENT_OF = {
  media: 'http://www.w3.org/TR/media-frags/',
  pdf: 'http://tools.ietf.org/rfc/rfc3778',
} as const;

/** W3C Web Annotation Data Model, FragmentSelector: a moment of a video, or a page and place of a PDF. */
export const FragmentSelector = z.object({
  type: z.literal('FragmentSelector'),
  conformsTo: z.enum(FRAGMENT_OF),
  value: z.string().min(1).max(300),
});
export type FragmentSelector = z.infer<typeof FragmentSelector>;

export const Selector = z.discriminatedUnion('type', [
  TextQuoteSelector,
  TextPositionSelector,
  RangeSelector,
  FragmentSelector,
]);
export type Selector = z.infer<typeof Selector>;
