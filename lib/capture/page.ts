import { StudentError } from '#lib/model/student-error.ts';
import { authorIn, dataOf } from './linked-data.ts';
import { LONGEST_AUTHOR, LONGEST_SITE, LONGEST_TITLE, LONGEST_URL, cut, oneLine } from './limits.ts';
import { licenceOf } from './page/licence.ts';
import { meta, metas } from './page/meta.ts';
import { publishedOf } from './page/published.ts';

/** What a page says of itself; `site` and `author` are empty where it says nothing. */
export interface Page {
  kind: 'page';
  /** Without fragment and credentials, at most 4000 UTF-16 units. */
  url: string;
  title: string;
  site: string;
  author: string;
  /** ISO 8601, as much of it as the page states; empty where it states none. */
  published: string;
  /** Address of its licence; empty where it names none. */
  licence: string;
}

/**
 * Reads a page's address, title, site, author, day of publication and licence.
 *
 * @throws StudentError `errorPageAddress` when its address is none of http, https and file, or is too long to keep
 */
export function readPage(doc: Document): Page {
  const url = addressOf(doc);
  return {
    kind: 'page',
    url: url.href,
    title: cut(titleOf(doc) || nameOf(url), LONGEST_TITLE),
    site: cut(siteOf(doc, url), LONGEST_SITE),
    author: cut(authorOf(doc), LONGEST_AUTHOR),
    published: publishedOf(doc),
    licence: licenceOf(doc),
  };
}

function addressOf(doc: Document): URL {
  // A frame whose document was written by its page has that page's address as its base only.
  for (const address of [doc.URL, doc.baseURI]) {
    if (!URL.canParse(address)) continue;
    const url = new URL(address);
    if (!/^(https?|file):$/.test(url.protocol)) continue;
    url.hash = '';
    url.username = '';
    url.password = '';
    if (url.href.length > LONGEST_URL) url.search = '';
    if (url.href.length <= LONGEST_URL) return url;
  }
  throw new StudentError('errorPageAddress');
}

/** The heading where the page's title repeats it: titles add the site's name. Else the best of the other claims. */
function titleOf(doc: Document): string {
  const title = oneLine(doc.title);
  const heading = oneLine(doc.querySelector('h1')?.textContent);
  if (heading.length > 2 && title.includes(heading)) return heading;
  const shared = meta(doc, 'og:title');
  // A page that changes without loading often leaves this one behind.
  const current = title === '' || title.includes(shared) ? shared : '';
  return meta(doc, 'citation_title') || current || title || heading;
}

function nameOf(url: URL): string {
  const last = url.pathname.split('/').filter(Boolean).at(-1) ?? '';
  try {
    return decodeURIComponent(last) || url.hostname;
  } catch {
    return last;
  }
}

function siteOf(doc: Document, url: URL): string {
  return meta(doc, 'og:site_name') || meta(doc, 'application-name') || url.hostname.replace(/^www\./, '');
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
