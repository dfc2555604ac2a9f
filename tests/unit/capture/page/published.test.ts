// @vitest-environment jsdom
import { beforeEach, describe, expect, it } from 'vitest';
import { readPage } from '#lib/capture/page.ts';
import { Source } from '#lib/model/source.ts';
import { show } from '../select.ts';

function publishedOf(head: string, body = ''): string {
  document.head.innerHTML = head;
  show(body);
  const { published } = readPage(document);
  expect(Source.shape.published.parse(published)).toBe(published);
  return published;
}

const meta = (name: string, content: string): string => `<meta name="${name}" content="${content}">`;
const data = (thing: unknown): string =>
  `<script type="application/ld+json">${JSON.stringify(thing)}</script>`;

beforeEach(() => {
  document.head.innerHTML = '';
});

describe('the day of publication is read', () => {
  it.each([
    ['<meta property="article:published_time" content="2021-10-03T23:30:00-05:00">', '2021-10-03'],
    [meta('citation_publication_date', '1996/5/7'), '1996-05-07'],
    [meta('citation_date', '2008'), '2008'],
    [meta('DC.date.issued', '2019-04'), '2019-04'],
    [meta('dcterms.issued', '2019-04-30'), '2019-04-30'],
    [meta('dc.date', '2012-12-01'), '2012-12-01'],
    [data({ '@type': 'Article', datePublished: '2020-02-29T08:00:00Z' }), '2020-02-29'],
    [data({ '@graph': [{ '@type': 'WebSite' }, { datePublished: '2020-03' }] }), '2020-03'],
    [data({ datePublished: 2020 }), ''],
  ])('from %s', (head, published) => expect(publishedOf(head)).toBe(published));

  it.each([
    ['<time pubdate datetime="2018-07-06">last week</time>', '2018-07-06'],
    ['<p class="byline">by A. Nemo, <time datetime="2018-07-06">6 July</time></p>', '2018-07-06'],
    ['<span itemprop="datePublished" content="2017-01-02">2 January</span>', '2017-01-02'],
    ['<time itemprop="datePublished">2017-01-02</time>', '2017-01-02'],
    ['<p>Low water at <time datetime="2018-07-06">6 July</time></p>', ''],
    ['', ''],
  ])('from %s', (body, published) => expect(publishedOf('', body)).toBe(published));
});

describe('of a date that can be read in two ways, only what is sure is taken', () => {
  it.each([
    ['03/04/2015', '2015'],
    ['12 May 1996', '1996'],
    ['2015-13-45', '2015'],
    ['2015-12-45', '2015-12'],
    ['2015-00-10', '2015'],
    ['spring', ''],
    ['0000-00-00', ''],
    ['20151203', ''],
    ['No. 123456', ''],
  ])('%s gives %s', (text, published) => expect(publishedOf(meta('dc.date', text))).toBe(published));
});

it('what says nothing is passed over for the next that does', () => {
  const head =
    meta('citation_date', 'soon') + meta('dc.date', '2011-11-11') + data({ datePublished: '2001' });
  expect(publishedOf(head)).toBe('2011-11-11');
});
