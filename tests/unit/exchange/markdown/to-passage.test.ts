// @vitest-environment jsdom
import { expect, test } from 'vitest';
import { ownPassage } from '#lib/capture/own/own-passage.ts';
import { looksLikeMarkdown } from '#lib/exchange/markdown/looks-like-markdown.ts';
import { passageOfMarkdown } from '#lib/exchange/markdown/to-passage.ts';

const htmlOf = (text: string) => passageOfMarkdown(text, document).html;
const textOf = (text: string) => ownPassage(htmlOf(text), document).text;

test('headings, lists, tables and emphasis', () => {
  expect(htmlOf('# Waves\n\n- **Swell** from *afar*\n  - deep\n\n| a | b |\n|--|--|\n| 1 | 2 |')).toBe(
    '<h1>Waves</h1> <ul> <li><strong>Swell</strong> from <em>afar</em> <ul> <li>deep</li> </ul> </li> </ul> ' +
      '<table> <thead> <tr> <th>a</th> <th>b</th> </tr> </thead> <tbody> <tr> <td>1</td> <td>2</td> </tr> </tbody> </table>',
  );
});

test.each([
  ['a $x_1*y_2*z$ b', 'a \\( x_1*y_2*z \\) b'],
  ['a \\(x_1*y_2*z\\) b', 'a \\( x_1*y_2*z \\) b'],
  ['\\[\n\\frac{a}{b}\n\\]', '\\[ \\frac{a}{b} \\]'],
  ['\\[ a\n+ b \\] then', '\\[ a + b \\]\nthen'],
  ['$$\na\n$$', '\\[ a \\]'],
  ['costs $5 and $6', 'costs $5 and $6'],
  ['`\\(x\\)` and `$y$`', '\\(x\\) and $y$'],
  ['broken $\\frac{1}{$ TeX', 'broken \\( \\frac{1}{ \\) TeX'],
])('%j keeps its formulas', (markdown, text) => expect(textOf(markdown)).toBe(text));

test('nothing is lost: addresses of links, tags of powers, markup that is no Markdown', () => {
  expect(textOf('See [this](http://127.0.0.1/a) and <http://127.0.0.1/b>')).toBe(
    'See this (http://127.0.0.1/a) and http://127.0.0.1/b',
  );
  expect(htmlOf('CO<sub>2</sub> <u>*a*</u> <b>x</b> <sup>y')).toBe(
    '<p>CO<sub>2</sub> <u><em>a</em></u> &lt;b&gt;x&lt;/b&gt; &lt;sup&gt;y</p>',
  );
  expect(textOf('<script>alert(1)</script>')).toBe('<script>alert(1)</script>');
});

test('pictures come along where their bytes are there', () => {
  const { html, pictures, lost } = passageOfMarkdown(
    '![a][p] ![b](http://127.0.0.1/b.png)\n\n[p]: data:image/png;base64,AAAA',
    document,
  );
  expect(html).toBe('<p><img data-picture="0" alt="a"> b (http://127.0.0.1/b.png)</p>');
  expect([pictures, lost]).toEqual([[{ dataUrl: 'data:image/png;base64,AAAA', alt: 'a' }], 1]);
});

test.each([
  ['# Waves\ntext', true],
  ['- a\n- b', true],
  ['**a** and `b`', true],
  ['| a | b |\n|---|---|', true],
  ['- [ ] to do', true],
  ['plain text', false],
  ['- one dash', false],
  ['2 * 3 * 4 = 24', false],
  ['#tag and a - b', false],
])('%j looks like Markdown: %s', (text, expected) => expect(looksLikeMarkdown(text)).toBe(expected));
