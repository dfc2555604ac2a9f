import { LONGEST_AUTHOR, cut, oneLine } from '../limits.ts';
import { authorIn, dataOf } from '../linked-data.ts';
import { licenceOf } from './licence.ts';
import { meta, metas } from './meta.ts';
import type { Page } from './place.ts';
import { publishedOf } from './published.ts';

/** Who wrote a page, when it was published, and where its licence stands; each empty where the page does not say. */
export function readProvenance(doc: Document): Pick<Page, 'author' | 'published' | 'licence'> {
  return {
    author: cut(authorOf(doc), LONGEST_AUTHOR),
    published: publishedOf(doc),
    licence: licenceOf(doc),
  };
}

function authorOf(doc: Document): string {
  const named = metas(doc, 'citation_author').join(', ') || meta(doc, 'author');
  if (named) return named;
  const article = meta(doc, 'article:author');
  if (article && !URL.canParse(article)) return article;
  return dataOf(doc, authorIn) || marked(doc);
}

/** Narrowest first: the element marked as author may say more than the name. */
const MARKS = ['[itemprop~="author"] [itemprop~="name"]', '[itemprop~="author"]', 'a[rel~="author"]'];

function marked(doc: Document): string {
  for (const mark of MARKS) {
    const element = doc.querySelector(mark);
    const author = oneLine(element?.getAttribute('content') ?? element?.textContent);
    if (author) return author;
  }
  return '';
}
