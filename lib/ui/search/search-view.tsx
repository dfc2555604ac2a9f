import { useEffect, useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { SearchDocument } from '#lib/notes/search/document.ts';
import { changeSettings } from '#lib/store/actions/courses.ts';
import { useDeck } from '../deck/deck-context.tsx';
import { useAction } from '../deck/use-action.ts';
import { linkTo } from '../desk/route.ts';
import { Trouble } from '../parts/trouble.tsx';
import { t } from '../text.ts';
import { type Asked, askedIn, filterOf, filtersSet, pathOf, withoutFilters } from './asked.ts';
import { Filters } from './filters.tsx';
import { KINDS } from './kinds.ts';
import { ResultList } from './result-list.tsx';
import type { Leading } from './result-row.tsx';
import { useDeckSearch } from './search-holder.tsx';
import { SearchStatus } from './search-status.tsx';
import { useNames } from './use-names.ts';
import { walkResults } from './walk-results.ts';

/** How many of each kind are shown at first, and how many more each time. */
const SHOWN = 5;
const SHOWN_MORE = 20;

/** The desk's page that finds anything kept or written. What is asked is in the address. */
export function SearchView({ courseId }: { courseId: string }) {
  const db = useDeck();
  const action = useAction();
  const [asked, ask] = useAsked();
  const [limit, setLimit] = useState(SHOWN);
  const names = useNames();
  const field = useRef<HTMLInputElement>(null);
  // With the first frame: what is typed from then on is looked for.
  useLayoutEffect(() => field.current!.focus({ preventScroll: true }), []);
  const { search, version, trouble } = useDeckSearch(asked.isEveryCourse ? null : courseId);
  const filter = useMemo(() => filterOf(asked, names?.topics ?? []), [asked, names]);
  const result = useMemo(
    () => search?.search(asked.text, filter, limit) ?? null,
    // eslint-disable-next-line react-hooks/exhaustive-deps -- `version` stands for what is in the index
    [search, version, asked.text, filter, limit],
  );
  const change = (part: Partial<Asked>) => {
    setLimit(SHOWN);
    ask({ ...asked, ...part });
  };
  const hasCourses = (names?.courses.length ?? 0) > 1;
  const openElsewhere = (document: SearchDocument, event: MouseEvent) => {
    if (document.courseId === courseId) return;
    // The desk shows one course: it is changed first.
    event.preventDefault();
    void action
      .run(() => changeSettings(db, { courseId: document.courseId, aimedTopicId: null }))
      .then((isDone) => isDone && (location.hash = linkTo(KINDS[document.kind].pathOf(document))));
  };
  const leading: Leading = { href: linkTo, isApart: false, opening: openElsewhere };
  return (
    <div class="stack" onKeyDown={walkResults}>
      <h1>{t('pageSearch')}</h1>
      <form class="sheet stack" role="search" onSubmit={(event) => event.preventDefault()}>
        <div class="field">
          <label for="search-field">{t('searchField')}</label>
          <input
            id="search-field"
            ref={field}
            type="search"
            autocomplete="off"
            aria-describedby="search-hint"
            value={asked.text}
            onInput={(event) => change({ text: event.currentTarget.value })}
          />
          <p class="soft" id="search-hint">
            {t('searchHint')}
          </p>
        </div>
        {hasCourses && (
          <label class="check">
            <input
              type="checkbox"
              checked={asked.isEveryCourse}
              onChange={(event) => change({ isEveryCourse: event.currentTarget.checked, topicId: '' })}
            />
            {t('searchInAll')}
          </label>
        )}
        {names && <Filters asked={asked} names={names} courseId={courseId} change={change} />}
      </form>
      <Trouble text={trouble ?? action.trouble} />
      <SearchStatus
        result={result}
        progress={search?.progress ?? null}
        text={asked.text}
        dropFilters={filtersSet(asked) > 0 ? () => change(withoutFilters(asked)) : null}
        lookEverywhere={hasCourses && !asked.isEveryCourse ? () => change({ isEveryCourse: true }) : null}
      />
      {search && names && result && (
        <ResultList
          result={result}
          reader={search.reader}
          about={(document) => names.about(document, asked.isEveryCourse)}
          leading={leading}
          showMore={() => setLimit(limit + SHOWN_MORE)}
        />
      )}
    </div>
  );
}

/** So long after the last key, in ms, what is asked is written to the address. Browsers limit how often it may be. */
const SETTLED_MS = 200;

const isHere = (): boolean => /^#\/search\b/.test(location.hash);

/** What is asked, which the address keeps, so that going back comes back to it. */
function useAsked(): [Asked, (asked: Asked) => void] {
  const [asked, setAsked] = useState(() => askedIn(location.hash));
  const written = useRef(asked);
  useEffect(() => {
    if (written.current === asked) return;
    const write = () => {
      written.current = asked;
      // Only while this page is the one that is shown.
      if (isHere()) history.replaceState(null, '', linkTo(pathOf(asked)));
    };
    const later = setTimeout(write, SETTLED_MS);
    const leaving = new AbortController();
    // A result may be opened before that.
    addEventListener('click', write, { capture: true, signal: leaving.signal });
    return () => {
      clearTimeout(later);
      leaving.abort();
    };
  }, [asked]);
  useEffect(() => {
    const leaving = new AbortController();
    const read = () => {
      if (!isHere()) return;
      const next = askedIn(location.hash);
      written.current = next;
      setAsked(next);
    };
    addEventListener('hashchange', read, { signal: leaving.signal });
    return () => leaving.abort();
  }, []);
  return [asked, setAsked];
}
