import { describe, expect, it, test } from 'vitest';
import { isTex, texOfImage } from '#lib/capture/maths/image-tex.ts';
import { pageOf } from './round-trip.ts';

const read = (html: string) => texOfImage(pageOf(html).querySelector('img')!);

// Where the page gives no hint.
test.each([
  'E = mc^2',
  'x^2',
  'x^{n+1} + y^{n+1}',
  'a_1 = b_2',
  'v_{0} t + x',
  '(a+b)^2',
  '10^{-3}',
  '\\alpha',
  '\\alpha\\beta',
  '\\frac{dy}{dx}',
  '\\int_0^\\infty e^{-x}\\,dx',
  '\\text{speed} = \\frac{d}{t}',
  '\\begin{pmatrix} 1 & 0 \\\\ 0 & 1 \\end{pmatrix}',
  '\\sin x + \\cos x',
  'e^{i\\pi} + 1 = 0',
])('%s is TeX', (alt) => {
  expect(isTex(alt, false)).toBe(true);
});

test.each([
  '',
  'Graph of y = x^2',
  'Figure 2: the parabola y = x^2 + 1',
  'A bridge at dusk',
  'my_photo_2.jpg',
  'img_0123',
  'snake_case_name',
  'C:\\Users\\anna\\wave.png',
  'C:\\x',
  '\\\\server\\share',
  'images\\wave.png',
  'Price: $5',
  '$5 to $10',
  '^_^',
  'logo',
  'E = mc',
  'H2O',
  'footnote^1',
  'Portrait of Émilie du Châtelet',
  'Wellen auf dem Wasser_1',
  'the \\alpha phase of iron',
])('%s is no TeX', (alt) => {
  expect(isTex(alt, false)).toBe(false);
});

// Where a class or delimiters say that there is a formula.
test.each(['x', 'F = ma', 'c, cx, cx^2, \\ldots', '1.5*I', 'area = \\pi r^2', "f''(x)", 'a < b'])(
  '%s is TeX in a picture of a formula',
  (alt) => {
    expect(isTex(alt, true)).toBe(true);
  },
);
test.each(['x squared plus one', 'equation', 'Graph of y = x^2', 'the square root of two', ''])(
  '%s is no TeX even there',
  (alt) => {
    expect(isTex(alt, true)).toBe(false);
  },
);

describe('what a picture says', () => {
  it.each([
    ['<img alt="$E = mc^2$">', 'E = mc^2'],
    ['<img alt="\\(a+b\\)">', 'a+b'],
    ['<img alt="LaTeX: a+b">', 'a+b'],
    ['<img class="latex" alt="a+b">', 'a+b'],
    ['<img class="mwe-math-fallback-image-inline" alt="{\\displaystyle a+b}">', '{\\displaystyle a+b}'],
    ['<img data-tex="a+b" alt="a plus b">', 'a+b'],
    ['<img data-latex="a+b">', 'a+b'],
    ['<img class="equation_image" title="a+b">', 'a+b'],
  ])('%s', (html, tex) => {
    expect(read(`<p>so ${html} holds</p>`)).toEqual({ tex, block: false });
  });

  it('nothing where it has words', () => {
    expect(read('<img class="math-teacher" alt="Portrait of a teacher">')).toBeNull();
    expect(read('<img class="aftermath" alt="ruins">')).toBeNull();
    expect(read('<img alt="$5 and not a cent more than $6">')).toBeNull();
    expect(read('<img>')).toBeNull();
  });
});

describe('a picture of a formula on a line of its own', () => {
  it.each([
    '<p>so <img alt="$$a+b$$"> holds</p>',
    '<p>so <img alt="\\[a+b\\]"> holds</p>',
    '<p>so <img class="math display" alt="a+b"> holds</p>',
    '<p>so <img class="tex" style="display: block" alt="a+b"> holds</p>',
    '<p> <img class="tex" alt="a+b"> </p>',
    '<center><img class="tex" alt="a+b"></center>',
  ])('%s', (html) => {
    expect(read(html)).toEqual({ tex: 'a+b', block: true });
  });

  it.each([
    '<p>so <img class="tex" alt="a+b"> holds</p>',
    '<p><img class="tex inline" alt="a+b"></p>',
    '<p><img class="tex" style="display: inline-block" alt="a+b"></p>',
    '<p><img class="tex" alt="a+b"> <img class="tex" alt="c"></p>',
    '<p><b><img class="tex" alt="a+b"></b></p>',
    '<img class="tex" alt="a+b">',
  ])('but not %s', (html) => {
    expect(read(html)).toEqual({ tex: 'a+b', block: false });
  });
});
