import { Fragment } from 'preact';
import type { Excerpt } from '#lib/notes/search/excerpt.ts';
import { Words } from '../parts/words.tsx';

interface ExcerptTextProps {
  text: string;
  excerpt: Excerpt;
}

/** The part of a text around what was found, which is marked. */
export function ExcerptText({ text, excerpt: { from, to, marks } }: ExcerptTextProps) {
  const ends = [from, ...marks.map((mark) => mark.to)];
  return (
    <>
      {from > 0 && '… '}
      {marks.map((mark, i) => (
        <Fragment key={mark.from}>
          <Words isInLine text={text.slice(ends[i], mark.from)} />
          <mark>
            <Words isInLine text={text.slice(mark.from, mark.to)} />
          </mark>
        </Fragment>
      ))}
      <Words isInLine text={text.slice(ends.at(-1), to)} />
      {to < text.length && ' …'}
    </>
  );
}
