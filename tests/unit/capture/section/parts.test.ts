// @vitest-environment jsdom
import katex from 'katex';
import { describe, expect, it } from 'vitest';
import { findPassage } from '#lib/capture/find/find-passage.ts';
import { readPageText } from '#lib/capture/find/page-text.ts';
import * as limits from '#lib/capture/limits.ts';
import {
  type Part,
  excessOf,
  headingsOfParts,
  passageOfParts,
  readParts,
  selectorsOfParts,
} from '#lib/capture/section/parts.ts';
import { cleanPassage, serialise } from '#lib/capture/sanitise.ts';
import { Passage } from '#lib/model/clip.ts';
import { Selector } from '#lib/model/selector.ts';
import { StudentError } from '#lib/model/student-error.ts';
import { find, rangeOver, show } from '../select.ts';

function partsOf(html: string, isLeftOut?: (element: Element) => boolean): Part[] {
  show(`<div id="all">${html}</div>`);
  return readParts(document, { range: rangeOver('#all'), isLeftOut });
}
const textsOf = (html: string): string[] => partsOf(html).map(({ text }) => text);
const display = katex.renderToString('a^2', { displayMode: true });
const inline = katex.renderToString('b');

describe('the parts of a page', () => {
  it.each([
    ['<h2>a</h2><p>b</p><p>c</p>', ['a', 'b', 'c']],
    ['<h2>a</h2><ul><li>b</li><li>c</li></ul>', ['a', '- b\n- c']],
    ['<div><div><p>a</p></div>b <em>c</em><p>d</p></div>', ['a', 'b c', 'd']],
    ['<table><tr><td>a</td><td>b</td></tr></table>', ['a\tb']],
    ['<table><tr><td><h2>a</h2><p>b</p></td></tr></table>', ['a', 'b']],
    ['<blockquote><p>a</p><p>b</p></blockquote><pre>c\n d</pre>', ['a\nb', 'c\n d']],
    ['<dl><dt>a</dt><dd>b</dd></dl>', ['a\nb']],
    ['<dl><dt>a</dt><dd><p>b</p><p>c</p></dd></dl>', ['a', 'b', 'c']],
    ['<figure><img alt="a"><figcaption>b</figcaption></figure>', ['a\nb']],
    ['a<br>b<div>c</div>d', ['a\nb', 'c', 'd']],
    [`<p>a</p>${display}<p>b ${inline}</p>`, ['a', '\\[ a^2 \\]', 'b \\( b \\)']],
    [`a ${inline} c<p>d</p>`, ['a \\( b \\) c', 'd']],
    [
      '<p>a</p><span class="MathJax">x</span><script type="math/tex">x^2</script><p>b</p>',
      ['a', '\\( x^2 \\)', 'b'],
    ],
    ['<span style="display:block">a</span><span style="display:block">b</span>', ['a', 'b']],
  ])('%s are %j', (html, texts) => expect(textsOf(html)).toEqual(texts));

  it.each([
    '<p></p><p> </p>',
    '<nav><p>x</p></nav>',
    '<aside><h3>x</h3></aside>',
    '<footer>x</footer>',
    '<form><p>x</p></form>',
    '<div role="navigation"><ul><li>x</li></ul></div>',
    '<div style="display:none"><p>x</p></div>',
    '<p style="visibility:hidden">x</p>',
    '<script>let x;</script><style>x{}</style>',
    '<button>x</button><hr>',
  ])('leave out %s', (html) => expect(textsOf(`<p>a</p>${html}<p>b</p>`)).toEqual(['a', 'b']));

  it('are taken from an aside in which the student selected something', () => {
    show('<aside><p id="a">a</p><p>b</p></aside><p>c</p>');
    const texts = readParts(document, { range: rangeOver('aside') }).map(({ text }) => text);
    expect(texts).toEqual(['a', 'b']);
  });

  it('pass over what is said to be left out', () => {
    const texts = partsOf('<p>a</p><div id="x"><p>b</p></div><p>c</p>', ({ id }) => id === 'x');
    expect(texts.map(({ text }) => text)).toEqual(['a', 'c']);
  });

  it('say so when there are none, and when there is far too much', () => {
    expect(() => partsOf('<p> </p>')).toThrow('errorSelectionEmpty');
    const much = `<p>${'x'.repeat(limits.LONGEST_PASSAGE)}</p>`;
    expect(partsOf(much.repeat(3))).toHaveLength(3);
    try {
      partsOf(`${much.repeat(3)}<p>y</p>`);
      expect.unreachable();
    } catch (error) {
      expect(error).toBeInstanceOf(StudentError);
      expect(error).toMatchObject({ message: 'errorStretchTooLong', values: ['300001', '100000'] });
    }
  });

  it('leave the page as it was', () => {
    show(`<div id="all"><h2>a</h2>b ${inline}<p>c</p></div>`);
    const before = document.body.innerHTML;
    readParts(document, { range: rangeOver('#all') });
    expect(document.body.innerHTML).toBe(before);
  });
});

describe('the passage of parts', () => {
  it('is one that the model takes, and clean', () => {
    const passage = passageOfParts(partsOf(`<h2>a</h2>b <b onclick="x()">c</b>${display}<p>d</p>e`));
    expect(Passage.parse(passage)).toEqual(passage);
    expect(passage.text).toBe('a\nb c\n\\[ a^2 \\]\nd\ne');
    expect(serialise(cleanPassage(passage.html, document))).toBe(passage.html);
  });

  it('holds what is left when parts were dropped', () => {
    const [a, , c] = partsOf('<h2>a</h2><p>b</p><ul><li>c</li></ul>');
    expect(passageOfParts([a!, c!])).toEqual({ text: 'a\n- c', html: '<h2>a</h2><ul><li>c</li></ul>' });
  });

  it('is too long by its text or by its markup', () => {
    const text = (length: number) => ({ text: 'x'.repeat(length), html: '' });
    expect(excessOf(text(limits.LONGEST_PASSAGE))).toBeNull();
    expect(excessOf(text(limits.LONGEST_PASSAGE + 1))).toEqual([100_001, 100_000]);
    expect(excessOf({ text: 'x', html: 'x'.repeat(limits.LONGEST_PASSAGE_HTML + 1) })).toEqual([
      limits.LONGEST_PASSAGE_HTML + 1,
      limits.LONGEST_PASSAGE_HTML,
    ]);
  });
});

describe('where parts stand', () => {
  const quoteOf = (parts: Part[]) => {
    const selectors = selectorsOfParts(document, parts);
    for (const selector of selectors) Selector.parse(selector);
    return selectors.find((each) => each.type === 'TextQuoteSelector')!.exact;
  };

  it('is one run while nothing between them was dropped, and ends at the first that was', () => {
    const parts = partsOf('<h2>a</h2>\n<p>b</p>\n<p>c</p>\n<p>d</p>');
    expect(quoteOf(parts)).toBe('a\nb\nc\nd');
    const [a, b, c, d] = parts;
    expect(quoteOf([a!, b!, d!])).toBe('a\nb');
    expect(quoteOf([c!, d!])).toBe('c\nd');
  });

  it('is found again', () => {
    const parts = partsOf('<h2>a</h2><p>long waves outrun</p><p>short ones</p>');
    const found = findPassage(readPageText(document.body), selectorsOfParts(document, parts.slice(1)));
    expect(found?.range.toString()).toBe('long waves outrunshort ones');
  });

  it('has the headings above the first of them', () => {
    const parts = partsOf('<h1>x</h1><h2>a</h2><p>b</p><h3>c</h3><p>d</p>');
    expect(headingsOfParts(document, parts.slice(1))).toEqual(['x']);
    expect(headingsOfParts(document, parts.slice(2))).toEqual(['a', 'x']);
    expect(headingsOfParts(document, parts.slice(4))).toEqual(['c', 'a', 'x']);
    expect(headingsOfParts(document, [])).toEqual([]);
    expect(find('h1').textContent).toBe('x');
  });
});
