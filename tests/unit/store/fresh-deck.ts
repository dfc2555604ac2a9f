import 'fake-indexeddb/auto';
import { openDeck } from '#lib/store/open.ts';
import type { Db } from '#lib/store/schema.ts';

let count = 0;

/** An empty deck of its own for each test. */
export const freshDeck = (): Promise<Db> => openDeck({ name: `deck-${++count}` });
