// @vitest-environment jsdom
// @vitest-environment-options {"url": "https://example.invalid/notes/waves"}
import { expect, it } from 'vitest';
import { readPage } from '#lib/capture/page.ts';
import { Source } from '#lib/model/source.ts';
import { show } from '../select.ts';

function licenceOf(head: string, body = ''): string {
  document.head.innerHTML = head;
  show(body);
  const { licence } = readPage(document);
  expect(Source.shape.licence.parse(licence)).toBe(licence);
  return licence;
}

const terms = 'https://licences.invalid/free';
const data = (thing: unknown): string =>
  `<script type="application/ld+json">${JSON.stringify(thing)}</script>`;

it.each([
  [`<link rel="license" href="${terms}">`, terms],
  ['<link rel="License" href="../licence#all">', 'https://example.invalid/licence#all'],
  [data({ license: terms }), terms],
  [data({ '@graph': [{ license: { '@id': terms } }] }), terms],
  [data({ license: { url: terms, '@id': '#x' } }), terms],
  [data({ license: 'free for all' }), ''],
  [`<meta name="DC.rights" content="${terms}">`, terms],
  ['<meta name="DC.rights" content="All rights kept">', ''],
  [`<meta name="dcterms.license" content="${terms}">`, terms],
  [`<meta property="cc:license" content="${terms}">`, terms],
  ['<link rel="license" href="javascript:alert(1)">', ''],
  [`<link rel="license" href="/${'x'.repeat(5000)}">`, ''],
  ['', ''],
])('in the head: %.80s', (head, licence) => expect(licenceOf(head)).toBe(licence));

it.each([
  [`<footer>Free. <a rel="noopener license" href="${terms}">Licence</a></footer>`, terms],
  [`<p><a rel="cc:license" href="${terms}">Licence</a></p>`, terms],
  [`<figure><img alt=""><figcaption><a rel="license" href="/picture">Picture</a></figcaption></figure>`, ''],
])('in the page: %s', (body, licence) => expect(licenceOf('', body)).toBe(licence));

it('the head speaks before the page, and the page before its data', () => {
  const link = '<a rel="license" href="/in-page">Licence</a>';
  const inData = data({ license: 'https://licences.invalid/data' });
  expect(licenceOf(`<link rel="license" href="${terms}">${inData}`, link)).toBe(terms);
  expect(licenceOf(inData, link)).toBe('https://example.invalid/in-page');
});
