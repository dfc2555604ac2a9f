// @vitest-environment jsdom
// @vitest-environment-options {"url": "http://127.0.0.1/waves"}
import { afterEach, beforeEach, expect, test } from 'vitest';
import { pictureSpotter } from '#lib/capture/pictures/spot.ts';
import { readSelection } from '#lib/capture/read-selection.ts';
import { find, rangeOver, select, show } from '../select.ts';
import { layOut } from './boxes.ts';

/** Images are there as if they had come, unless they say otherwise. */
const natural = Object.getOwnPropertyDescriptor(HTMLImageElement.prototype, 'naturalWidth')!;
beforeEach(() => {
  Object.defineProperty(HTMLImageElement.prototype, 'naturalWidth', {
    configurable: true,
    get(this: HTMLImageElement) {
      return this.hasAttribute('data-broken') ? 0 : 100;
    },
  });
});
afterEach(() => {
  Object.defineProperty(HTMLImageElement.prototype, 'naturalWidth', natural);
  document.body.replaceChildren();
});

/** Selects the whole of a page and reads it; gives the markup and the pictures that were found. */
function read(html: string) {
  show(`<main>${html}</main>`);
  layOut(document);
  select(rangeOver('main'));
  const { found, spot } = pictureSpotter();
  const { passage, selectors } = readSelection(document, spot);
  return { ...passage, selectors, found };
}

test('pictures stand in the passage by number, with their text and their size', () => {
  const { html, text, found } = read(
    '<p>See <img src="a.png" alt="a wave" data-box="0 0 200.4 100"> and ' +
      '<svg data-box="0 0 60 50"><title>crests</title><text>inside</text></svg>.</p>',
  );
  expect(html).toBe(
    '<p>See <img data-picture="0" alt="a wave" width="200" height="100"> and ' +
      '<img data-picture="1" alt="crests" width="60" height="50">.</p>',
  );
  expect(text).toBe('See a wave and crests.');
  expect(found).toEqual([find('img'), find('svg')]);
});

test.each([
  ['a sign in the text keeps its words', '<img alt="left" data-box="0 0 18 18">', 'left', ''],
  ['an ornament goes', '<img alt="" data-box="0 0 30 300">', '', ''],
  ['a picture without text that is large enough stays', '<img alt="" data-box="0 0 40 40">', '', 'img'],
  [
    'one that did not come keeps its words',
    '<img data-broken alt="a graph" data-box="0 0 90 90">',
    'a graph',
    '',
  ],
  ['one that is not for reading goes', '<svg aria-hidden="true" data-box="0 0 90 90"></svg>', '', ''],
])('%s', (_what, markup, words, kept) => {
  const { html, text } = read(`<p>Look: ${markup} so.</p>`);
  expect(text.replace(/\s+/g, ' ')).toBe(`Look: ${words}${words && ' '}so.`);
  expect(html.includes('<img')).toBe(kept !== '');
});

test('an image of a formula becomes one', () => {
  const { html, found } = read(
    '<p>So <img class="tex" alt="c = \\sqrt{gh}" data-box="0 0 90 30"> holds.</p>',
  );
  expect(found).toEqual([]);
  expect(html).toContain('<math');
});

test('at most twenty pictures', () => {
  const { html, found } = read(`<p>${'<img alt="w" data-box="0 0 50 50">'.repeat(25)}</p>`);
  expect(found).toHaveLength(20);
  expect(html.match(/<img/g)).toHaveLength(20);
});

test('a picture alone, without a word, is something', () => {
  const { html, text, selectors } = read('<div><img alt="" data-box="0 0 200 100"></div>');
  expect([text, selectors]).toEqual(['', []]);
  expect(html).toContain('<img data-picture="0"');
});

test('without a spotter pictures are their words, and nothing but them is nothing', () => {
  show('<main><p>See <img alt="a wave" data-box="0 0 200 100">.</p></main>');
  select(rangeOver('main'));
  expect(readSelection(document).passage.html).toBe('<p>See a wave.</p>');
  show('<main><img alt=""></main>');
  select(rangeOver('main'));
  expect(() => readSelection(document)).toThrow('errorSelectionEmpty');
});
