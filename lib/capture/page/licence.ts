import { LONGEST_URL } from '../limits.ts';
import { dataOf, textIn } from '../linked-data.ts';
import { firstRead, metas } from './meta.ts';

/** A picture's licence beside it does not speak for the page. */
const LINKS =
  'link[rel~="license" i], :not(figure, figcaption) > a[rel~="license" i], a[rel~="cc:license" i]';

const NAMES = ['dcterms.license', 'dcterms.rights', 'dc.rights', 'cc:license'];

/** Where the licence of the page stands, if it names one by its address; else empty. */
export function licenceOf(doc: Document): string {
  const linked = [...doc.querySelectorAll<HTMLLinkElement | HTMLAnchorElement>(LINKS)].map(
    ({ href }) => href,
  );
  const inData = dataOf(doc, ({ license }) => textIn(license, ['url', '@id']));
  return firstRead([...linked, inData, ...metas(doc, ...NAMES)], address);
}

function address(text: string): string {
  return text.length <= LONGEST_URL && /^https?:/i.test(text) && URL.canParse(text) ? text : '';
}
