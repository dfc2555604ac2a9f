import { describe, expect, it, test } from 'vitest';
import { normaliseMathml } from '#lib/capture/maths/normalise-mathml.ts';
import { texToMathml } from '#lib/capture/maths/tex-to-mathml.ts';

const made = (tex: string, display = false): string => {
  const result = texToMathml({ tex, display });
  if ('error' in result) throw new Error(result.error);
  return result.mathml;
};

test('MathML with its TeX', () => {
  expect(made('a^2')).toBe(
    '<math><semantics><msup><mi>a</mi><mn>2</mn></msup>' +
      '<annotation encoding="application/x-tex">a^2</annotation></semantics></math>',
  );
});

test('displayed formulas are marked', () => {
  expect(made('a', true)).toMatch(/^<math display="block">/);
});

test('no class, style or address', () => {
  const all = made('\\color{red}{\\boxed{a}}\\begin{aligned} a &= b \\end{aligned}\\cancel{x}\\bar{x}', true);
  expect(all).not.toMatch(/ (class|style|href|src|id|on\w+)=/);
  expect(all).toContain('columnalign="right"');
  expect(all).toContain('<menclose notation="box">');
});

test('what stands over a thing is no power of it', () => {
  const normal = normaliseMathml(made('\\overset{a}{b}'));
  expect(normal).toBe('<math><mover><mi>b</mi><mi>a</mi></mover></math>');
});

test('\\mbox is text', () => {
  expect(normaliseMathml(made('\\mbox{if}'))).toBe('<math><mtext>if</mtext></math>');
});

describe('errors are values', () => {
  it.each(['\\nosuchcommand', '\\frac{a}', '{', 'a & b', '\\begin{foo}a\\end{foo}', '\\left('])(
    '%s',
    (tex) => {
      expect(texToMathml({ tex, display: false })).toEqual({ error: expect.any(String) });
    },
  );

  it('TeX that goes on without end', () => {
    expect(texToMathml({ tex: '\\def\\a{\\a\\a}\\a', display: false })).toEqual({
      error: expect.any(String),
    });
    expect(texToMathml({ tex: 'x'.repeat(20_001), display: false })).toEqual({ error: 'too long' });
  });

  it('TeX that defines a command leaves the next formula alone', () => {
    expect(texToMathml({ tex: '\\gdef\\mine{x}\\mine', display: false })).toHaveProperty('mathml');
    expect(texToMathml({ tex: '\\mine', display: false })).toHaveProperty('error');
  });
});

test('markup in TeX stays text', () => {
  const mathml = made('\\text{<img src=x onerror=alert(1)>}');
  expect(mathml).not.toContain('<img');
  const link = texToMathml({ tex: '\\href{javascript:alert(1)}{x}', display: false });
  expect(link).toEqual({ error: expect.any(String) });
});
