import { useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import { NO_FILTER } from '#lib/notes/search/filter.ts';
import { byRank } from '#lib/notes/search/results.ts';
import { deskLink } from '../parts/desk-link.ts';
import { Trouble } from '../parts/trouble.tsx';
import { t } from '../text.ts';
import { NOTHING_ASKED, pathOf } from './asked.ts';
import { KINDS } from './kinds.ts';
import { type Leading, ResultRow } from './result-row.tsx';
import { SearchHolder, useDeckSearch } from './search-holder.tsx';
import { SearchStatus } from './search-status.tsx';
import { useNames } from './use-names.ts';
import { walkResults } from './walk-results.ts';

const SHOWN = 6;
const LEADING: Leading = { href: deskLink, isApart: true };

/** The search of the popup: the best few, each opened at the desk. Loaded when it is opened. */
export function SearchBox({ courseId }: { courseId: string }) {
  return (
    <SearchHolder>
      <Box courseId={courseId} />
    </SearchHolder>
  );
}

function Box({ courseId }: { courseId: string }) {
  const [text, setText] = useState('');
  const field = useRef<HTMLInputElement>(null);
  const names = useNames();
  const { search, version, trouble } = useDeckSearch(courseId);
  const result = useMemo(
    () => search?.search(text, NO_FILTER, SHOWN) ?? null,
    // eslint-disable-next-line react-hooks/exhaustive-deps -- `version` stands for what is in the index
    [search, version, text],
  );
  useLayoutEffect(() => field.current!.focus(), []);
  const best =
    result?.kinds
      .flatMap(({ found }) => found)
      .sort(byRank)
      .slice(0, SHOWN) ?? [];
  const atDesk = deskLink(pathOf({ ...NOTHING_ASKED, text }));
  return (
    <div class="stack" role="search" onKeyDown={walkResults}>
      <div class="field">
        <label for="search-field">{t('searchField')}</label>
        <input
          id="search-field"
          ref={field}
          type="search"
          autocomplete="off"
          value={text}
          onInput={(event) => setText(event.currentTarget.value)}
        />
      </div>
      <Trouble text={trouble} />
      <SearchStatus
        result={result}
        progress={search?.progress ?? null}
        text={text}
        dropFilters={null}
        lookEverywhere={null}
      />
      {search && names && result && best.length > 0 && (
        <ul class="results">
          {best.map(({ document }) => (
            <ResultRow
              key={document.id}
              document={document}
              marked={result.marked}
              reader={search.reader}
              about={`${t(KINDS[document.kind].name)} · ${names.about(document, false)}`}
              leading={LEADING}
            />
          ))}
        </ul>
      )}
      <p>
        <a href={atDesk} target="_blank">
          {t('searchAtDesk')}
        </a>
      </p>
    </div>
  );
}
