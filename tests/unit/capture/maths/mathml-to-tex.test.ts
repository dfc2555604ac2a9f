import { expect, test } from 'vitest';
import { mathmlToTex } from '#lib/capture/maths/mathml-to-tex.ts';
import { texToMathml } from '#lib/capture/maths/tex-to-mathml.ts';

const bare = (tex: string): string => {
  const made = texToMathml({ tex, display: false });
  if ('error' in made) throw new Error(made.error);
  return made.mathml.replace(/<annotation[\s\S]*?<\/annotation>/, '');
};

// TeX as a person would write it, from MathML that knows nothing of TeX.
test.each([
  'a + b = c',
  'x^{2}',
  'x_{i}^{2}',
  "f''(x)",
  '\\frac{a}{b}',
  '\\binom{n}{k}',
  '\\sqrt[{3}]{x}',
  '\\sin\\theta',
  '\\lim_{x \\to 0}f(x)',
  '\\sum_{i = 1}^{n}i',
  '\\hat{x} + \\vec{F} + \\overline{AB}',
  '\\mathbf{v}\\mathrm{d}t',
  '\\begin{pmatrix} 1 & 0 \\\\ 0 & 1 \\end{pmatrix}',
  '\\begin{cases} a & b \\\\ c & d \\end{cases}',
  '\\left( \\frac{a}{b} \\right)',
  '(a + b)^{2}',
  'a\\quad b',
  '\\text{50\\% of }x',
  '1, 2, 3',
  '{}_{2}F_{1}',
  '\\underbrace{a + b}',
  '\\underset{n}{\\underbrace{a + b}}',
  '\\boxed{a}',
])('%s', (tex) => {
  expect(mathmlToTex(bare(tex))).toBe(tex);
});

test.each([
  ['<math><mi>ρ</mi><mo>&#x2062;</mo><mi>g</mi></math>', '\\rho g'],
  ['<math><mfenced open="[" close=")"><mi>a</mi><mi>b</mi></mfenced></math>', '[a, b)'],
  ['<math><mo>{</mo><mi>a</mi><mo>}</mo></math>', '\\{a\\}'],
  ['<math><mtext>a_b {c} \\ ~</mtext></math>', '\\text{a\\_b \\{c\\} \\textbackslash{} \\textasciitilde{}}'],
  [
    '<math><mmultiscripts><mi>C</mi><none/><none/><mprescripts/><mn>6</mn><mn>14</mn></mmultiscripts></math>',
    '{}_{6}^{14}C',
  ],
  ['<math><mi>𝛼</mi><mi>𝐁</mi><mi>ℒ</mi></math>', '\\alpha\\mathbf{B}\\mathcal{L}'],
  ['<math><mi>lim sup</mi></math>', '\\limsup'],
  [
    '<math><mover><mo>→</mo><mover><mi>f</mi><mspace width="3em"/></mover></mover></math>',
    '\\xrightarrow{f}',
  ],
  ['<math><mi>erf</mi><mo>&#x2061;</mo><mi>x</mi></math>', '\\operatorname{erf}x'],
])('%s', (mathml, tex) => {
  expect(mathmlToTex(mathml)).toBe(tex);
});

test.each(['', 'a', '<math></math>', '<math><mphantom/></math><p>', '<math><mi>a</math>'])(
  '%s has none',
  (markup) => {
    expect(mathmlToTex(markup)).toBeNull();
  },
);
