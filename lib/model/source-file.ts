import { z } from 'zod';
import { Id, Kept } from './basics.ts';

/** The heaviest file that is kept, in bytes. */
export const HEAVIEST_FILE = 100_000_000;

/** The file behind a source, kept because the student said so. */
export const SourceFile = Kept.extend({
  sourceId: Id,
  name: z.string().max(300),
  bytes: z.instanceof(Blob).refine((blob) => blob.size <= HEAVIEST_FILE, { message: 'too heavy' }),
});
export type SourceFile = z.infer<typeof SourceFile>;
