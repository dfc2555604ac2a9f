import { type ComponentChildren, createContext } from 'preact';
import { useContext, useEffect, useRef, useState } from 'preact/hooks';
import type { DeckSearch } from '#lib/store/deck-search.ts';
import { useDeck } from '../deck/deck-context.tsx';
import { tell } from '../text.ts';

/** The searches of a page by course; they live as long as it, so that going back to the search is instant. */
class Searches {
  readonly closing = new AbortController();
  readonly byCourse = new Map<string | null, DeckSearch>();
}

const SearchesContext = createContext<{ current: Searches | null } | null>(null);

/** Holds what is searched in; holds nothing until a search below it is wanted. */
export function SearchHolder({ children }: { children: ComponentChildren }) {
  const searches = useRef<Searches | null>(null);
  useEffect(
    () => () => {
      searches.current?.closing.abort();
      searches.current = null;
    },
    [],
  );
  return <SearchesContext.Provider value={searches}>{children}</SearchesContext.Provider>;
}

export interface DeckSearchState {
  /** Null until it has been loaded. */
  search: DeckSearch | null;
  /** Another number whenever there may be more, or something else, to find. */
  version: number;
  trouble: string | null;
}

/** The search over a course, or over all (null). It is loaded by the first screen that shows it. Only below SearchHolder. */
export function useDeckSearch(courseId: string | null): DeckSearchState {
  const db = useDeck();
  const holder = useContext(SearchesContext)!;
  const [state, setState] = useState<DeckSearchState & { of: string | null }>({
    search: null,
    version: 0,
    trouble: null,
    of: courseId,
  });
  useEffect(() => {
    const leaving = new AbortController();
    const fail = (error: unknown) => setState((before) => ({ ...before, trouble: tell(error) }));
    void import('#lib/store/deck-search.ts').then(({ DeckSearch }) => {
      if (leaving.signal.aborted) return;
      const searches = (holder.current ??= new Searches());
      let search = searches.byCourse.get(courseId);
      if (!search) {
        search = new DeckSearch(db, courseId, searches.closing.signal, fail);
        searches.byCourse.set(courseId, search);
      }
      setState({ search, version: 0, trouble: null, of: courseId });
      search.onUpdate(
        () => setState((before) => ({ ...before, version: before.version + 1 })),
        leaving.signal,
      );
    }, fail);
    return () => leaving.abort();
  }, [db, holder, courseId]);
  // Of another course, nothing is shown meanwhile.
  return state.of === courseId ? state : { search: null, version: 0, trouble: null };
}
