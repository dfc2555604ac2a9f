import { describe, expect, it, test } from 'vitest';
import { normaliseMathml } from '#lib/capture/maths/normalise-mathml.ts';
import { normalOfTex } from './round-trip.ts';

const normal = (content: string) => normaliseMathml(`<math>${content}</math>`);
const ofTex = (tex: string) => normalOfTex({ tex, display: false });

describe('the same formula', () => {
  test.each([
    [
      'rows in rows',
      '<mrow><mi>a</mi><mrow><mo>+</mo><mi>b</mi></mrow></mrow>',
      '<mi>a</mi><mo>+</mo><mi>b</mi>',
    ],
    ['white space', '<mi> a </mi>\n <mo>\t+</mo>', '<mi>a</mi><mo>+</mo>'],
    ['hyphen and minus', '<mo>-</mo><mi>x</mi>', '<mo>−</mo><mi>x</mi>'],
    ['entities', '<mo>&minus;</mo><mi>&#x3C0;</mi>', '<mo>&#8722;</mo><mi>π</mi>'],
    ['apostrophes', "<msup><mi>f</mi><mo>'</mo></msup>", '<msup><mi>f</mi><mo>′</mo></msup>'],
    [
      'double primes',
      '<msup><mi>f</mi><mo>″</mo></msup>',
      '<msup><mi>f</mi><mrow><mo>′</mo><mo>′</mo></mrow></msup>',
    ],
    ['alphabets', '<mi mathvariant="bold">x</mi>', '<mi>𝐱</mi>'],
    ['italics', '<mi>𝑥</mi>', '<mi>x</mi>'],
    ['italics by name', '<mi mathvariant="italic">x</mi>', '<mi>x</mi>'],
    ['upright words', '<mi mathvariant="normal">k</mi><mi mathvariant="normal">g</mi>', '<mi>kg</mi>'],
    ['invisible signs', '<mi>f</mi><mo>&#x2061;</mo><mi>x</mi>', '<mi>f</mi><mi>x</mi>'],
    ['space', '<mi>a</mi><mspace width="2em"/><mi>b</mi>', '<mi>a</mi><mi>b</mi>'],
    ['text', '<mtext>if&nbsp; so </mtext>', '<mtext>if so</mtext>'],
    [
      'stretching',
      '<mo stretchy="false" fence="true">(</mo><mi>a</mi><mo>)</mo>',
      '<mo>(</mo><mi>a</mi><mo>)</mo>',
    ],
    [
      'fences',
      '<mfenced><mi>a</mi><mi>b</mi></mfenced>',
      '<mo>(</mo><mi>a</mi><mo>,</mo><mi>b</mi><mo>)</mo>',
    ],
    ['limits', '<munder><mo>∑</mo><mi>i</mi></munder>', '<msub><mo>∑</mo><mi>i</mi></msub>'],
    [
      'style',
      '<mstyle displaystyle="true"><mfrac><mi>a</mi><mi>b</mi></mfrac></mstyle>',
      '<mfrac><mi>a</mi><mi>b</mi></mfrac>',
    ],
    [
      'brackets and their power',
      '<msup><mrow><mo>(</mo><mi>a</mi><mo>)</mo></mrow><mn>2</mn></msup>',
      '<mo>(</mo><mi>a</mi><msup><mo>)</mo><mn>2</mn></msup>',
    ],
    [
      'scripts before',
      '<mmultiscripts><mi>X</mi><mprescripts/><mn>1</mn><mn>2</mn></mmultiscripts>',
      '<msubsup><mrow/><mn>1</mn><mn>2</mn></msubsup><mi>X</mi>',
    ],
    ['accents', '<mover><mi>x</mi><mo>^</mo></mover>', '<mover accent="true"><mi>x</mi><mo>ˆ</mo></mover>'],
    [
      'annotations',
      '<semantics><mi>a</mi><annotation encoding="application/x-tex">a</annotation></semantics>',
      '<mi>a</mi>',
    ],
    ['the element of a sign', '<mi mathvariant="normal">∂</mi>', '<mo>𝜕</mo>'],
  ])('%s', (_what, one, other) => {
    expect(normal(one)).toBe(normal(other));
    expect(normal(one)).not.toBe('<math></math>');
  });

  it('whatever the prefix, the namespace, the display', () => {
    const plain = normaliseMathml('<math><mi>a</mi></math>');
    expect(normaliseMathml('<m:math xmlns:m="x" display="block"><m:mi>a</m:mi></m:math>')).toBe(plain);
    expect(normaliseMathml('<?xml version="1.0"?><!-- a --><math><mi><![CDATA[a]]></mi></math>')).toBe(plain);
  });

  it('normalising twice is normalising once', () => {
    const once = ofTex('\\left(\\frac{a}{b}\\right)^2 + \\mathrm{kg}\\,\\vec{F}')!;
    expect(normaliseMathml(once)).toBe(once);
  });
});

// Pairs of which a student who wrote one for the other would be wrong.
test.each([
  ['x^2', 'x_2'],
  ['x^2', 'x2'],
  ['\\frac{a}{b}', '\\frac{b}{a}'],
  ['\\frac{a}{b}', '\\genfrac{}{}{0pt}{}{a}{b}'],
  ['\\binom{n}{k}', '\\left(\\frac{n}{k}\\right)'],
  ['a - b', 'a + b'],
  ['\\mathbf{v}', 'v'],
  ['\\mathrm{d}', 'd'],
  ['\\mathbb{R}', 'R'],
  ['\\mathcal{L}', 'L'],
  ["f'", 'f'],
  ["f'", "f''"],
  ['\\phi', '\\varphi'],
  ['\\epsilon', '\\varepsilon'],
  ['\\sigma', '\\varsigma'],
  ['\\sqrt{ab}', '\\sqrt{a}b'],
  ['\\sqrt[3]{a}', '\\sqrt{a}'],
  ['\\hat{x}', '\\bar{x}'],
  ['\\dot{x}', '\\ddot{x}'],
  ['\\overline{ab}', '\\underline{ab}'],
  ['\\vec{x}', 'x'],
  ['<', '>'],
  ['<', '\\leq'],
  ['a \\to b', 'a \\Rightarrow b'],
  ['a \\cdot b', 'a \\times b'],
  ['x_{ij}', 'x_i j'],
  ['x_i^2', '{x^2}_i'],
  ['e^{x+1}', 'e^x + 1'],
  ['\\mathrm{ms}', '\\mathrm{m\\,s}'],
  ['\\mathrm{m}', '\\text{m}'],
  ['\\sum_i^n', '\\sum_n^i'],
  ['\\sum', '\\prod'],
  ['\\int', '\\oint'],
  ['12', '1\\,2'],
  ['1.2', '12'],
  ['(a,b)', '[a,b]'],
  ['|a|', '\\|a\\|'],
  ['\\begin{matrix}1&2\\end{matrix}', '\\begin{matrix}1\\\\2\\end{matrix}'],
  ['\\begin{matrix}&1\\end{matrix}', '\\begin{matrix}1\\end{matrix}'],
  ['\\cancel{x}', 'x'],
  ['(a)(b)^2', '((a)(b))^2'],
  ['\\Delta', '\\nabla'],
  ['0', 'O'],
  ['\\text{or}', '\\text{and}'],
])('%s and %s stay different', (one, other) => {
  expect(ofTex(one)).not.toBeNull();
  expect(ofTex(other)).not.toBeNull();
  expect(ofTex(one)).not.toBe(ofTex(other));
});

test.each([
  '',
  'x',
  '<math>',
  '<math><mi>a</math>',
  '<math></math>x',
  '<math/><math/>',
  '<math><mi>a</mi></math></p>',
])('no MathML: %s', (markup) => {
  expect(normaliseMathml(markup)).toBeNull();
});

test('nesting without end is refused', () => {
  expect(normaliseMathml(`${'<mrow>'.repeat(100_000)}${'</mrow>'.repeat(100_000)}`)).toBeNull();
});
