import { useId } from 'preact/hooks';
import type { SearchDocument } from '#lib/notes/search/document.ts';
import type { WordReader } from '#lib/notes/search/read-words.ts';
import type { SearchResult } from '#lib/notes/search/search-index.ts';
import { t, tn } from '../text.ts';
import { KINDS } from './kinds.ts';
import { type Leading, ResultRow } from './result-row.tsx';

interface ResultListProps {
  result: SearchResult;
  reader: WordReader;
  about(document: SearchDocument): string;
  leading: Leading;
  showMore(): void;
}

/** What was found, kind by kind. */
export function ResultList({ result, reader, about, leading, showMore }: ResultListProps) {
  const id = useId();
  return (
    <>
      {result.kinds.map(({ kind, count, found }) => (
        <section class="sheet stack" key={kind} aria-labelledby={`${id}${kind}`}>
          <h2 id={`${id}${kind}`}>{tn(KINDS[kind].counted, count)}</h2>
          <ul class="results">
            {found.map(({ document }) => (
              <ResultRow
                key={document.id}
                document={document}
                marked={result.marked}
                reader={reader}
                about={about(document)}
                leading={leading}
              />
            ))}
          </ul>
          {found.length < count && (
            <div>
              <button type="button" class="plain" onClick={showMore}>
                {t('searchMore', count - found.length)}
              </button>
            </div>
          )}
        </section>
      ))}
    </>
  );
}
