import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { render } from '@testing-library/preact';
import type { ComponentChildren } from 'preact';
import { afterAll, afterEach, beforeEach, vi } from 'vitest';
import { openDeck } from '#lib/store/open.ts';
import type { Db, Row, StoreName } from '#lib/store/schema.ts';
import { SETTINGS_KEY } from '#lib/model/settings.ts';
import { DeckProvider } from '#lib/ui/deck/deck-context.tsx';
import { Desk } from '#lib/ui/desk/desk.tsx';
import { fakeExtension } from './fake-extension.ts';
import { clearScreen } from './student.ts';

/** Rows to begin with, by store. */
export type Rows = { [S in StoreName]?: Row<S>[] };

let open: Db[] = [];

/** Before each test of a file: an extension without a deck. After it: nothing is left on the screen. */
export function freshScreens(): void {
  beforeEach(() => {
    // Not after each: what a screen still does on leaving needs them.
    vi.restoreAllMocks();
    vi.stubGlobal('indexedDB', new IDBFactory());
    vi.stubGlobal('scrollTo', vi.fn());
    vi.stubGlobal('ResizeObserver', NoLayout);
    vi.stubGlobal('navigator', Object.create(navigator, { storage: { value: storage } }));
    fakeExtension();
    location.hash = '';
  });
  afterEach(() => {
    clearScreen();
    for (const db of open) db.close();
    open = [];
    vi.unstubAllGlobals();
  });
  // Preact looks 35 ms after a drawing whether it was painted: by then the simulated page must still be there.
  afterAll(() => new Promise((done) => setTimeout(done, 60)));
}

/** Nothing is laid out here, so that nothing changes its size. */
class NoLayout {
  observe = () => undefined;
  disconnect = () => undefined;
}

const storage = { persisted: async () => true };

/** The deck that the screens open, with these rows in it. */
export async function deckWith(rows: Rows = {}): Promise<Db> {
  const db = await openDeck();
  open.push(db);
  const stores = Object.keys(rows) as StoreName[];
  if (stores.length === 0) return db;
  const transaction = db.transaction(stores, 'readwrite');
  for (const store of stores)
    for (const row of rows[store]!)
      await (store === 'settings'
        ? transaction.objectStore(store).put(row as never, SETTINGS_KEY)
        : transaction.objectStore(store).put(row as never));
  await transaction.done;
  return db;
}

/** Shows a component with the deck open around it. */
export const renderInDeck = (screen: ComponentChildren) => render(<DeckProvider>{screen}</DeckProvider>);

/** Opens the desk on one of its pages, over a deck with these rows. */
export async function openDesk(path: string, rows: Rows = {}): Promise<Db> {
  const db = await deckWith(rows);
  location.hash = `#/${path}`;
  renderInDeck(<Desk />);
  return db;
}
