import { Fragment } from 'preact';
import { useMemo } from 'preact/hooks';
import { excerptOf } from '#lib/notes/search/excerpt.ts';
import type { WordReader } from '#lib/notes/search/read-words.ts';
import { Words } from '../parts/words.tsx';

interface ExcerptTextProps {
  text: string;
  /** The words that were found: see excerptOf. */
  marked: ReadonlyMap<string, number>;
  reader: WordReader;
}

/** The part of a text around what was found, which is marked. */
export function ExcerptText({ text, marked, reader }: ExcerptTextProps) {
  const { from, to, marks } = useMemo(() => excerptOf(text, marked, reader), [text, marked, reader]);
  const ends = [from, ...marks.map((mark) => mark.to)];
  return (
    <>
      {from > 0 && '… '}
      {marks.map((mark, i) => (
        <Fragment key={mark.from}>
          <Words text={text.slice(ends[i], mark.from)} />
          <mark>
            <Words text={text.slice(mark.from, mark.to)} />
          </mark>
        </Fragment>
      ))}
      <Words text={text.slice(ends.at(-1), to)} />
      {to < text.length && ' …'}
    </>
  );
}
