// @vitest-environment jsdom
import { describe, expect, it } from 'vitest';
import { sectionAround } from '#lib/capture/section/section-around.ts';
import { marked } from '../select.ts';

/** The text of the section around what is marked, on one line. */
const around = (html: string): string =>
  sectionAround(marked(html), document).toString().replace(/\s+/g, ' ').trim();

describe('from the heading above to the next of its level or a higher one', () => {
  it.each([
    ['<h2>a</h2><p>b [c]</p><p>d</p><h2>e</h2><p>f</p>', 'ab cd'],
    ['<h2>a</h2><p>[b]</p><h3>c</h3><p>d</p><h2>e</h2>', 'abcd'],
    ['<h2>a</h2><h3>b</h3><p>[c]</p><h3>d</h3><p>e</p>', 'bc'],
    ['<h2>a</h2><h3>b</h3><p>[c]</p><h2>d</h2><p>e</p>', 'bc'],
    ['<h1>a</h1><p>[b]</p><h2>c</h2><p>d</p>', 'abcd'],
    ['<h2>a</h2><p>b</p><h2>c</h2><p>[d]</p>', 'cd'],
    ['<h2>a [b]</h2><p>c</p><h2>d</h2>', 'a bc'],
    ['<p role="heading" aria-level="3">a</p><p>[b]</p><h3>c</h3>', 'ab'],
    ['<p role="heading">a</p><p>[b]</p><h2>c</h2>', 'ab'],
    ['<h2>a</h2><p>[b</p><h2>c</h2><p>d]</p><h2>e</h2>', 'abcd'],
    ['<h2>a</h2><p>[b]</p><h2> </h2><p>c</p>', 'ab c'],
  ])('%s gives %s', (html, text) => expect(around(html)).toBe(text));

  it('through the containers that a page puts around headings and text', () => {
    expect(
      around('<div><div><h2>a</h2></div><div><p>b</p></div></div><div><p>[c]</p></div><div><h2>d</h2></div>'),
    ).toBe('abc');
  });
});

describe('inside the content', () => {
  it.each([
    ['<article><h2>a</h2><p>[b]</p></article><p>c</p><h2>d</h2>', 'ab'],
    ['<main><h2>a</h2><p>[b]</p></main><footer>c</footer>', 'ab'],
    ['<h1>x</h1><div role="main"><p>a</p><p>[b]</p></div><p>c</p>', 'ab'],
    ['<article><p>[a]</p><p>b</p><h2>c</h2><p>d</p></article><p>e</p>', 'abcd'],
    ['<article><h2>a</h2><p>b</p><aside><h3>c</h3><p>[d]</p></aside><p>e</p></article>', 'cd'],
    ['<article><h2>a</h2><aside><h3>x</h3></aside><p>[b]</p></article>', 'axb'],
    ['<article><h2>a</h2><p>[b]</p><nav><h2>c</h2></nav><p>d</p><h2>e</h2></article>', 'abcd'],
    ['<div><h2>a</h2><p>[b]</p></div><div>c</div>', 'ab'],
    ['<p>a</p><p>[b]</p>', 'ab'],
  ])('%s gives %s', (html, text) => expect(around(html)).toBe(text));
});

it('leaves the page and the range as they are', () => {
  const range = marked('<h2>a</h2><p>b [c]</p>');
  const before = document.body.innerHTML;
  sectionAround(range, document);
  expect(document.body.innerHTML).toBe(before);
  expect(range.toString()).toBe('c');
});
