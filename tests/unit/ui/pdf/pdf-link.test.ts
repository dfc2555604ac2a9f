import { beforeEach, expect, test } from 'vitest';
import { nameByContents, nameOfAddress, sizeText } from '#lib/ui/pdf/pdf-file.ts';
import { pdfClipLink, placeOfClip, startOf } from '#lib/ui/pdf/pdf-link.ts';
import { FileName, type Source } from '#lib/model/source.ts';
import { FRAGMENT_OF, type Selector } from '#lib/model/selector.ts';
import { MORNING, newId } from '../../builders.ts';
import { fakeExtension } from '../fake-extension.ts';

beforeEach(() => fakeExtension());

const source = (url: string): Source => ({
  id: newId(),
  createdAt: MORNING,
  changedAt: MORNING,
  kind: 'pdf',
  url,
  title: 'Waves',
  site: '',
  author: '',
  published: '',
  licence: '',
});
const selectors: Selector[] = [
  { type: 'TextQuoteSelector', exact: 'waves' },
  { type: 'FragmentSelector', conformsTo: FRAGMENT_OF.pdf, value: 'page=3&viewrect=1,2,3,4' },
];
const WEB = 'http://127.0.0.1/waves.pdf';

test('a clip of a kept file opens in the reader, at its passage', () => {
  const web = source(WEB);
  const link = pdfClipLink({ selectors }, web, true);
  expect(link).toMatch(new RegExp(`/pdf\\.html#source=${web.id}&page=3&viewrect=1,2,3,4$`));
  expect(startOf(new URL(link).hash)).toEqual({
    tabId: null,
    sourceId: web.id,
    place: { page: 3, rect: { left: 1, top: 2, width: 3, height: 4 } },
  });
});

test('else it opens at its address, at the page; a file without address is asked for in the reader', () => {
  expect(pdfClipLink({ selectors }, source(WEB), false)).toBe(`${WEB}#page=3&viewrect=1,2,3,4`);
  expect(pdfClipLink({ selectors: [] }, source(WEB), false)).toBe(WEB);
  const nameless = source(`ni:///sha-256;${'A'.repeat(43)}`);
  expect(pdfClipLink({ selectors: [] }, nameless, false)).toMatch(
    new RegExp(`/pdf\\.html#source=${nameless.id}$`),
  );
});

test('a moment of a video is no place in a PDF', () => {
  const moment: Selector = { type: 'FragmentSelector', conformsTo: FRAGMENT_OF.media, value: 't=30' };
  expect(placeOfClip({ selectors: [moment] })).toBeNull();
});

test.each([
  ['', null],
  ['#tab=17', 17],
  ['#tab=-1', null],
  ['#tab=17x', null],
])('the address “%s” names the tab %s', (hash, tabId) => {
  expect(startOf(hash).tabId).toBe(tabId);
});

// RFC 6920, section 8.2: the name of "Hello World!" under sha-256.
test('a file is named by its contents as RFC 6920 has it', async () => {
  const name = await nameByContents(new Blob(['Hello World!']));
  expect(name).toBe('ni:///sha-256;f4OxZX_x_FO5LcGBSKHWXfwtSx-j1ncoSt3SABJtkGk');
  expect(FileName.safeParse(name).success).toBe(true);
});

test('a file from an address has its name from there', () => {
  expect(nameOfAddress('http://127.0.0.1/a/deep%20water.pdf?x=1')).toBe('deep water.pdf');
  expect(nameOfAddress('http://127.0.0.1/')).toBe('127.0.0.1');
  expect(nameOfAddress('http://127.0.0.1/%E0%A4')).toBe('%E0%A4');
});

test('sizes are told in kilobytes and megabytes', () => {
  expect([sizeText(7092), sizeText(640_000), sizeText(1_440_000), sizeText(100_000_000)]).toEqual([
    '7.1 kB',
    '640 kB',
    '1.4 MB',
    '100 MB',
  ]);
});
