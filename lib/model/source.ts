import { z } from 'zod';
import { Kept } from './basics.ts';

/** Addresses a clip may lead back to. Anything else (javascript:, data:, extension pages) is refused. */
export const WebAddress = z
  .url()
  .max(4000)
  .refine((url) => /^(https?|file):/i.test(url), { message: 'not a web address' });

/** The name of a file without an address, by its contents: RFC 6920, `ni:///sha-256;` and base64url. */
export const FileName = z.string().regex(/^ni:\/\/\/sha-256;[A-Za-z0-9_-]{43}$/);

/** The name of the student's own notes: RFC 9562 in the form of RFC 8141. */
export const OwnName = z.string().regex(/^urn:uuid:[0-9a-f-]{36}$/);

/** Where a clip came from; 'own' are the student's own notes. */
export const Source = Kept.extend({
  kind: z.enum(['page', 'video', 'pdf', 'own']),
  /** The page's address without its fragment, or the name of a file or of own notes: one source each. */
  url: z.union([WebAddress, FileName, OwnName]),
  title: z.string().max(1000),
  site: z.string().max(300),
  author: z.string().max(300),
  /** As the page states it: a day, a month or a year of ISO 8601; empty where it does not. */
  published: z.string().regex(/^(\d{4}(-\d{2}(-\d{2})?)?)?$/),
  /** Where the page's licence stands; empty where it names none. */
  licence: z.union([WebAddress, z.literal('')]),
});
export type Source = z.infer<typeof Source>;

/** Whether a source can be opened by its address. */
export const hasAddress = ({ url }: Pick<Source, 'url'>): boolean => WebAddress.safeParse(url).success;
