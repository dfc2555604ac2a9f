import { z } from 'zod';
import { Kept } from './basics.ts';

/** Addresses a clip may lead back to. Anything else (javascript:, data:, extension pages) is refused. */
export const WebAddress = z
  .url()
  .max(4000)
  .refine((url) => /^(https?|file):/i.test(url), { message: 'not a web address' });

/** Where a clip came from. Video, PDF and the student's own notes join as kinds of their own. */
export const Source = Kept.extend({
  kind: z.enum(['page']),
  /** The page's address without its fragment: one source per address. */
  url: WebAddress,
  title: z.string().max(1000),
  site: z.string().max(300),
  author: z.string().max(300),
});
export type Source = z.infer<typeof Source>;
