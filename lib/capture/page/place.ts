import { StudentError } from '#lib/model/student-error.ts';
import { LONGEST_SITE, LONGEST_TITLE, LONGEST_URL, cut, oneLine } from '../limits.ts';
import { meta } from './meta.ts';

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
 * Reads a page's address, title and site. Who wrote it, when and on what terms is read apart (./provenance.ts): the
 * script that runs in the student's page has no room for it.
 *
 * @throws StudentError `errorPageAddress` when its address is none of http, https and file, or is too long to keep
 */
export function readPlace(doc: Document): Page {
  const url = addressOf(doc);
  return {
    kind: 'page',
    url: url.href,
    title: cut(titleOf(doc) || nameOf(url), LONGEST_TITLE),
    site: cut(siteOf(doc, url), LONGEST_SITE),
    author: '',
    published: '',
    licence: '',
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
