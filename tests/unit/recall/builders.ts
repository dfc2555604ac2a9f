import fc from 'fast-check';
import type { Item } from '#lib/model/item.ts';
import type { Recalled } from '#lib/recall/memory.ts';

export const MINUTE = 60_000;
export const DAY = 86_400_000;

/** A fixed moment from which tests count: 2026-03-02 09:00 UTC. */
export const START = Date.UTC(2026, 2, 2, 9);

/** The n-th id of a test. */
export const idOf = (n: number): string => `00000000-0000-4000-8000-${n.toString(16).padStart(12, '0')}`;

/** The n-th item: a question of one mark, in the first topic, unless overridden. */
export const itemOf = (n: number, over: Partial<Item> = {}): Item => ({
  kind: 'question',
  id: idOf(n),
  topicId: idOf(9001),
  clipId: null,
  asks: 'What is the pressure at depth z?',
  covers: 'Surface pressure plus density times g times z.',
  marks: 1,
  ...over,
});

/** An attempt as memory sees it, fully right unless overridden. */
export const recalled = (n: number, at: number, over: Partial<Recalled> = {}): Recalled => ({
  id: idOf(n),
  at,
  marks: 1,
  outOf: 1,
  seconds: 12,
  order: 'gain',
  ...over,
});

/** Up to 12 attempts out of four marks, within some 200 days from START; equal times are likely. */
export const anyAttempts = fc
  .array(
    fc.record({
      at: fc.oneof(
        fc.nat(200).map((d) => d * DAY),
        fc.nat(3_600_000),
      ),
      marks: fc.nat(4),
      order: fc.constantFrom('gain', 'forward', 'backToFront', 'outOfOrder', null),
    }),
    {
      maxLength: 12,
    },
  )
  .map((all) =>
    all.map((a, n) =>
      recalled(n, START + a.at, { marks: a.marks, outOf: 4, seconds: 5 + a.marks, order: a.order }),
    ),
  );
