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

export const Selector = z.discriminatedUnion('type', [TextQuoteSelector, TextPositionSelector]);
export type Selector = z.infer<typeof Selector>;
