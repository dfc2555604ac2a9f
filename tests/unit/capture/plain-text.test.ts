// @vitest-environment jsdom
import { describe, expect, it } from 'vitest';
import { plainText } from '#lib/capture/plain-text.ts';
import { fragmentOf } from './select.ts';

const textOf = (html: string): string => plainText(fragmentOf(html));

describe('blocks and white space', () => {
  it.each([
    ['<p>a\n   b</p>\n<p>c</p>', 'a b\nc'],
    ['<p> a <em> b</em> c </p>', 'a b c'],
    ['a<br>b', 'a\nb'],
    ['<h2>H</h2>text<hr>more', 'H\ntext\nmore'],
    ['<pre>if x:\n    y\n\n    z</pre>', 'if x:\n    y\n\n    z'],
    ['a\u00a0b', 'a\u00a0b'],
    ['<dl><dt>salt</dt><dd>35 g/kg</dd></dl>', 'salt\n35 g/kg'],
    ['<blockquote>a</blockquote>b', 'a\nb'],
    ['<p>the <q>deep</q></p>', 'the \u201cdeep\u201d'],
    ['', ''],
  ])('%j reads %j', (html, text) => expect(textOf(html)).toBe(text));
});

describe('lists', () => {
  it.each([
    ['<ul><li>a</li><li>b</li></ul>', '- a\n- b'],
    ['<ol><li>a</li><li>b</li></ol>', '1. a\n2. b'],
    ['<ol start="4"><li>a</li><li value="9">b</li><li>c</li></ol>', '4. a\n9. b\n10. c'],
    ['<ul><li>a<ol><li>b</li><li>c</li></ol></li><li>d</li></ul>', '- a\n  1. b\n  2. c\n- d'],
    ['<ul>\n<li><p>a</p><p>b</p></li>\n</ul>after', '- a\n  b\nafter'],
  ])('%j reads %j', (html, text) => expect(textOf(html)).toBe(text));
});

it('writes tables with tabs and rows', () => {
  const html =
    '<table><caption>T</caption><thead><tr><th>a</th><th>b</th></tr></thead>' +
    '<tbody><tr><td>1<br>2</td><td></td></tr><tr><td><p>x</p></td><td>y</td></tr></tbody></table>';
  expect(textOf(html)).toBe('T\na\tb\n1 2\t\nx\ty'.replace('\t\n', '\n'));
});

it('keeps powers apart from their base, and ordinals together', () => {
  expect(textOf('10<sup>6</sup> m s<sup>\u22121</sup>, 1<sup>st</sup>, CO<sub>2</sub>')).toBe(
    '10^6 m s^\u22121, 1st, CO2',
  );
});

describe('formulas without TeX', () => {
  const math = (inner: string): string => `<math>${inner}</math>`;
  it.each([
    ['<msup><mi>x</mi><mn>2</mn></msup>', 'x^2'],
    ['<msub><mi>a</mi><mrow><mi>i</mi><mo>+</mo><mn>1</mn></mrow></msub>', 'a_(i + 1)'],
    ['<msubsup><mi>x</mi><mn>0</mn><mn>2</mn></msubsup>', 'x_0^2'],
    ['<mfrac><mi>a</mi><mi>b</mi></mfrac>', '(a)/(b)'],
    ['<msqrt><mi>g</mi><mi>h</mi></msqrt>', '\u221a(gh)'],
    ['<mroot><mi>x</mi><mn>3</mn></mroot>', '(x)^(1/3)'],
    ['<mi>sin</mi><mo>\u2061</mo><mi>x</mi>', 'sinx'],
    ['<mn>2</mn><mo>\u2062</mo><mi>k</mi><mo>=</mo><mo>-</mo><mn>1</mn>', '2k = -1'],
    [
      '<munderover><mo>\u2211</mo><mrow><mi>i</mi><mo>=</mo><mn>1</mn></mrow><mi>n</mi></munderover><mi>i</mi>',
      '\u2211_(i = 1)^n i',
    ],
    [
      '<mtable><mtr><mtd><mn>1</mn></mtd><mtd><mn>0</mn></mtd></mtr><mtr><mtd><mn>2</mn></mtd></mtr></mtable>',
      '[1, 0; 2]',
    ],
    [
      '<mmultiscripts><mi>C</mi><none></none><none></none><mprescripts></mprescripts><mn>6</mn><mn>14</mn></mmultiscripts>',
      '_6^14 C',
    ],
    ['<msup><mi>f</mi><mo>\u2032</mo></msup>', 'f\u2032'],
    ['<mi>a</mi><mphantom><mi>b</mi></mphantom><mtext> if </mtext><mi>c</mi>', 'a if c'],
  ])('%s reads %s', (inner, text) => expect(textOf(math(inner))).toBe(text));
});

it('writes TeX on one line and displayed formulas on a line of their own', () => {
  const note = '<annotation encoding="application/x-tex">a\n  b</annotation>';
  expect(textOf(`x <math><semantics><mi>a</mi>${note}</semantics></math> y`)).toBe('x \\( a b \\) y');
  expect(textOf(`x <math display="block"><semantics><mi>a</mi>${note}</semantics></math> y`)).toBe(
    'x\n\\[ a b \\]\ny',
  );
});

it('keeps every script', () => {
  expect(textOf('<p>\u6d77\u6d41\u3068\u6ce2</p><p dir="rtl">\u0628\u062d\u0631 \u{1f30a}</p>')).toBe(
    '\u6d77\u6d41\u3068\u6ce2\n\u0628\u062d\u0631 \u{1f30a}',
  );
});
