import { createContext, type ComponentChildren } from 'preact';
import { useContext, useLayoutEffect, useState } from 'preact/hooks';
import { openDeck } from '#lib/store/open.ts';
import type { Db } from '#lib/store/schema.ts';
import { tell, t } from '../text.ts';

const DeckContext = createContext<Db | null>(null);

/** The open deck. Only below DeckProvider. */
export function useDeck(): Db {
  const db = useContext(DeckContext);
  if (!db) throw new Error('useDeck stands outside DeckProvider');
  return db;
}

/** Opens the deck and shows what is below once it is open; says what stands in the way when it cannot be. */
export function DeckProvider({ children }: { children: ComponentChildren }) {
  const [db, setDb] = useState<Db | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  // Before the first frame, since every screen waits for it.
  useLayoutEffect(() => {
    let opened: Db | undefined;
    let gone = false;
    openDeck({
      onBlocked: () => setTrouble(t('errorDeckBlocked')),
      onClosed: () => setTrouble(t('errorDeckClosed')),
    }).then(
      (deck) => {
        opened = deck;
        if (gone) return deck.close();
        setTrouble(null);
        setDb(deck);
      },
      (error: unknown) => setTrouble(tell(error)),
    );
    return () => {
      gone = true;
      opened?.close();
    };
  }, []);
  return (
    <>
      {trouble !== null && (
        <p class="trouble" role="alert">
          {trouble}
        </p>
      )}
      {db && <DeckContext.Provider value={db}>{children}</DeckContext.Provider>}
    </>
  );
}
