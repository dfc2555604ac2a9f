// @vitest-environment jsdom
import { describe, expect, test } from 'vitest';
import { allowOnly, serialise } from '#lib/capture/allow-only.ts';
import { figureOf } from '#lib/capture/pictures/figure.ts';
import { settlePlaces } from '#lib/capture/pictures/places.ts';
import { cleanPassage } from '#lib/capture/sanitise.ts';

const clean = (html: string) => serialise(cleanPassage(html, document));
const light = (html: string) => serialise(allowOnly(html, document));

describe.each([
  ['cleanPassage', clean],
  ['allowOnly', light],
])('%s', (_name, cleaner) => {
  test.each([
    ['a place with all it may have', '<img data-picture="3" alt="a wave" width="20" height="10">'],
    ['in a figure', '<figure><img data-picture="0" alt=""><figcaption>Depth</figcaption></figure>'],
  ])('keeps %s', (_what, html) => {
    expect(cleaner(html)).toBe(html);
  });

  test.each([
    ['an address', '<img data-picture="0" src="http://127.0.0.1/a.png" srcset="b.png 2x" alt="a">'],
    ['a handler', '<img data-picture="0" onerror="alert(1)" onload="alert(1)" alt="a">'],
    ['styles and names', '<img data-picture="0" style="width:9px" class="x" id="y" loading="lazy" alt="a">'],
  ])('takes %s from a place', (_what, html) => {
    expect(cleaner(html)).toBe('<img data-picture="0" alt="a">');
  });

  test.each([
    ['no number', '<img src="a.png" alt="a wave">'],
    ['a number too long', '<img data-picture="123" alt="a wave">'],
    ['no number at all', '<img data-picture="javascript:1" alt="a wave">'],
    ['an empty one', '<img data-picture="" alt="a wave">'],
  ])('makes words of an image with %s', (_what, html) => {
    expect(cleaner(html)).toBe('a wave');
  });

  test('takes a measure that is none, and text that could be markup', () => {
    expect(cleaner('<img data-picture="0" alt="a &lt;b>" width="1e9&quot;" height="9">')).toBe(
      '<img data-picture="0" height="9">',
    );
  });
});

test('places are numbered anew for the pictures that were got; text stands for the rest', () => {
  const root = cleanPassage(
    '<p><img data-picture="0" alt="first"> <img data-picture="2" alt="third"> <img data-picture="1" alt="second"></p>',
    document,
  );
  expect(settlePlaces(root, [null, 'B', 'C'])).toEqual(['C', 'B']);
  expect(serialise(root)).toBe(
    '<p>first <img data-picture="0" alt="third"> <img data-picture="1" alt="second"></p>',
  );
});

describe('a figure', () => {
  test('has its pictures and its words, and is clean', () => {
    const html = figureOf(document, 'Depth & width\nof the shelf', [
      { alt: 'cells', width: 20.4, height: 10 },
    ]);
    expect(html).toBe(
      '<figure><img data-picture="0" alt="cells" width="20" height="10"></figure>' +
        '<p>Depth &amp; width</p><p>of the shelf</p>',
    );
    expect(clean(html)).toBe(html);
  });

  test('without a picture it is its words', () => {
    expect(figureOf(document, 'a < b', [])).toBe('<p>a &lt; b</p>');
  });
});
