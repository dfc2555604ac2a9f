import type { SearchResult } from '#lib/notes/search/search-index.ts';
import { t, tn } from '../text.ts';

interface SearchStatusProps {
  /** Null while there is nothing yet to search in. */
  result: SearchResult | null;
  progress: { done: number; all: number } | null;
  text: string;
  /** Null where no filter is set. */
  dropFilters: (() => void) | null;
  /** Null where all courses are searched already. */
  lookEverywhere: (() => void) | null;
}

/** How many things were found; where it was none, what to try next. What it says is read out. */
export function SearchStatus({ result, progress, text, dropFilters, lookEverywhere }: SearchStatusProps) {
  const isReading = progress === null || progress.done < progress.all;
  const isNothing = result !== null && result.hasWords && result.count === 0 && !isReading;
  const isEmpty = progress?.all === 0 && lookEverywhere === null;
  return (
    <>
      {progress !== null && isReading && (
        <p class="soft">
          {t('searchReading', progress.done.toLocaleString(), progress.all.toLocaleString())}
        </p>
      )}
      <p role="status" class={isNothing ? 'unseen' : undefined}>
        {said(result, isNothing, text)}
      </p>
      {isEmpty ? (
        <p>{t('searchEmpty')}</p>
      ) : (
        isNothing && (
          <div class="stack">
            <p class="wrap">{t('searchNothing', shortened(text))}</p>
            <p class="soft">{t('searchNothingHint')}</p>
            <div class="row">
              {dropFilters && (
                <button type="button" onClick={dropFilters}>
                  {t('searchDropFilters')}
                </button>
              )}
              {lookEverywhere && (
                <button type="button" onClick={lookEverywhere}>
                  {t('searchEverywhere')}
                </button>
              )}
            </div>
          </div>
        )
      )}
    </>
  );
}

function said(result: SearchResult | null, isNothing: boolean, text: string): string {
  if (!result?.hasWords) return '';
  if (isNothing) return t('searchNothing', shortened(text));
  if (result.count === 0) return '';
  return tn(result.isComplete ? 'searchFound' : 'searchSome', result.count);
}

const shortened = (text: string): string => {
  const signs = [...text.trim()];
  return signs.length > 60 ? `${signs.slice(0, 60).join('')} …` : signs.join('');
};
