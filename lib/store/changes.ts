import { z } from 'zod';
import { Attempt } from '#lib/model/attempt.ts';
import type { StoreName } from './schema.ts';
import { ROWS } from './schema.ts';
import type { Touched } from './touched.ts';

const AnyStore = z.enum(Object.keys(ROWS) as [StoreName, ...StoreName[]]);

/**
 * Which stores an action wrote. Pages read again what they show of them; where all that was written is one attempt, it
 * comes along, so that nobody has to read all the others for it. `rows` are the ids of the rows that were written or
 * deleted; of a store that is missing there any row may have changed.
 */
const Change = z.object({
  stores: z.array(AnyStore),
  attempt: Attempt.optional(),
  rows: z.partialRecord(AnyStore, z.array(z.string())).optional(),
});
export type Change = z.infer<typeof Change>;

const CHANNEL = 'plumbline-changes';
const here = new EventTarget();
let channel: BroadcastChannel | undefined;

/** Opened on first use, so that importing this file does nothing. */
function feed(): BroadcastChannel {
  if (channel) return channel;
  channel = new BroadcastChannel(CHANNEL);
  channel.addEventListener('message', ({ data }) => {
    const change = Change.safeParse(data);
    if (change.success) here.dispatchEvent(new CustomEvent('change', { detail: change.data }));
  });
  return channel;
}

/** Tells every page of the extension, this one included, that stores were written. */
export function announce(stores: readonly StoreName[], attempt?: Attempt, rows?: Touched): void {
  const change: Change = { stores: [...stores], ...(attempt && { attempt }), ...(rows && { rows }) };
  feed().postMessage(change);
  here.dispatchEvent(new CustomEvent('change', { detail: change }));
}

/** Calls `listener` after each committed action, in this page or another, until `signal` aborts. */
export function onChange(listener: (change: Change) => void, signal: AbortSignal): void {
  feed();
  here.addEventListener('change', (event) => listener((event as CustomEvent<Change>).detail), { signal });
}
