import { z } from 'zod';
import { Id, Millis } from './basics.ts';
import { MarkCount, withinMarks } from './mark-count.ts';

/** What came of what went wrong: an unclear mark on a clip or topic, or a question. */
export const Became = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('unclearTopic'), id: Id }),
  z.object({ kind: z.literal('unclearClip'), id: Id }),
  z.object({ kind: z.literal('question'), id: Id }),
]);
export type Became = z.infer<typeof Became>;

/** One attempt at a problem without notes. An append-only fact: never changed, never derived. */
export const Redo = z
  .object({
    id: Id,
    courseId: Id,
    problemId: Id,
    /** The topics it stood under at the time. */
    topicIds: z.array(Id).max(20),
    /** When it was marked. */
    at: Millis,
    /** From begun to marked, in seconds. */
    seconds: z.number().nonnegative().max(86_400),
    marks: MarkCount,
    outOf: MarkCount.positive(),
    /** What went wrong, in a few words; empty where nothing did or nothing was said. */
    wentWrong: z.string().trim().max(500),
    /** Null where it became nothing. */
    became: Became.nullable(),
  })
  .refine(withinMarks, { message: 'more marks than there are' })
  .refine(({ became, wentWrong }) => became === null || wentWrong !== '', {
    message: 'came of nothing',
    path: ['became'],
  });
export type Redo = z.infer<typeof Redo>;
