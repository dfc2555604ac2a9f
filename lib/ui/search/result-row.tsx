import { useMemo } from 'preact/hooks';
import { excerptOf } from '#lib/notes/search/excerpt.ts';
import type { SearchDocument } from '#lib/notes/search/document.ts';
import type { WordReader } from '#lib/notes/search/read-words.ts';
import { t } from '../text.ts';
import { ExcerptText } from './excerpt-text.tsx';
import { KINDS } from './kinds.ts';

/** What a list of results leads to and with. */
export interface Leading {
  href(path: string): string;
  /** In a tab of its own. */
  isApart: boolean;
  /** Called before a result is opened. Prevents the click's default where it opens the result itself. */
  opening?(document: SearchDocument, event: MouseEvent): void;
}

interface ResultRowProps {
  document: SearchDocument;
  marked: ReadonlyMap<string, number>;
  reader: WordReader;
  /** Where it belongs, in words. */
  about: string;
  leading: Leading;
}

/** One thing that was found: its first text as the link to it, and its others where they hold what was looked for. */
export function ResultRow({ document, marked, reader, about, leading }: ResultRowProps) {
  const [first, ...others] = useMemo(
    () => document.fields.map(({ text }) => ({ text, excerpt: excerptOf(text, marked, reader) })),
    [document, marked, reader],
  );
  const shown = others.filter(({ excerpt }) => excerpt.marks.length > 0);
  return (
    <li class="result">
      <a
        class="excerpt"
        href={leading.href(KINDS[document.kind].pathOf(document))}
        {...(leading.isApart && { target: '_blank' })}
        onClick={(event) => leading.opening?.(document, event)}
      >
        {first!.text === '' ? (
          t(document.kind === 'clip' ? 'clipPicture' : 'searchNoLead')
        ) : (
          <ExcerptText {...first!} />
        )}
      </a>
      {shown.map((one, i) => (
        <p class="excerpt" key={i}>
          <ExcerptText {...one} />
        </p>
      ))}
      {about !== '' && <p class="soft">{about}</p>}
    </li>
  );
}
