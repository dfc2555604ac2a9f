import { beforeAll, describe, expect, it } from 'vitest';
import { readDrawing } from '#lib/capture/maths/drawn-maths.ts';
import { normaliseMathml } from '#lib/capture/maths/normalise-mathml.ts';
import corpus from '#tests/data/formulas.json' with { type: 'json' };
import { pageOf, roundTrips } from './round-trip.ts';
import { TYPESETTERS, mathJax } from './typesetters.ts';

const { formulas } = corpus;

const TALL = '\\frac{\\frac{a}{b}}{\\frac{c}{\\frac{d}{e}}}';

/** Drawn together, since a typesetter takes seconds to start. */
const DRAWN = {
  scripts: 'x_a^b',
  limits: '\\sum_a^b',
  roots: '\\sqrt[3]{\\frac{a}{b}} + \\sqrt{a+b} + \\binom{n}{k}',
  stretched: `\\left(${TALL}\\right]\\left\\{${TALL}\\right\\rangle\\left\\lceil${TALL}\\right\\rfloor\\overbrace{a+b+c+d}`,
  letters: '\\phi\\varphi\\epsilon x\\mathrm{d}\\mathcal{L}\\mathbf{v}\\mathbb{R}h',
  matrix: '\\begin{matrix} 1 & 2 \\\\ 3 & 4 \\end{matrix}',
};
type Drawn = Record<keyof typeof DRAWN, string | null>;

/** What is rebuilt from markup, as a string. */
function rebuilt(markup: string): string | null {
  return readDrawing(pageOf(markup).body)?.outerHTML.replace(/ xmlns="[^"]*"/g, '') ?? null;
}

describe('a drawing by MathJax of which it left no MathML', () => {
  it.each(['mathjax-4-chtml', 'mathjax-4-svg', 'mathjax-3-chtml', 'mathjax-3-svg'])(
    '%s: is rebuilt as MathJax itself would write it',
    async (name) => {
      const chosen = formulas.filter((_formula, index) => index % 20 === 1);
      const [bare, written] = await Promise.all(
        [name, `${name}-mathml`].map(async (each) => {
          const { typeset } = TYPESETTERS.find((typesetter) => typesetter.name === each)!;
          return roundTrips(await typeset(chosen), chosen).map((trip) => trip?.normal);
        }),
      );
      const other = chosen.filter((_formula, index) => bare![index] !== written![index]);
      expect(other.length / chosen.length).toBeLessThanOrEqual(0.02);
    },
    120_000,
  );
});

describe('parts of a drawing', () => {
  describe.each([
    ['mathjax', 'chtml'],
    ['mathjax', 'svg'],
    ['mathjax3', 'chtml'],
    ['mathjax3', 'svg'],
  ] as const)('%s, %s', (name, output) => {
    let drawn: Drawn;
    beforeAll(async () => {
      const jobs = Object.values(DRAWN).map((tex) => ({ tex, display: true, output, assistive: false }));
      const markup = await mathJax(name, jobs);
      drawn = Object.fromEntries(
        Object.keys(DRAWN).map((key, index) => [key, rebuilt(markup[index]!)]),
      ) as Drawn;
    });

    it('what is above and below does not change places', () => {
      expect(drawn.scripts).toBe('<msubsup><mi>x</mi><mi>a</mi><mi>b</mi></msubsup>');
      expect(drawn.limits).toBe('<munderover><mo>∑</mo><mi>a</mi><mi>b</mi></munderover>');
    });

    it('roots, fractions and fractions without a line', () => {
      const made = drawn.roots;
      expect(made).toContain('<mroot><mfrac><mi>a</mi><mi>b</mi></mfrac><mn>3</mn></mroot>');
      expect(made).toContain('<msqrt><mrow><mi>a</mi><mo>+</mo><mi>b</mi></mrow></msqrt>');
      expect(made).toContain('<mfrac linethickness="0"><mi>n</mi><mi>k</mi></mfrac>');
    });

    it('stretched signs are themselves', () => {
      const made = drawn.stretched;
      expect([...made!.matchAll(/<mo>([^+<]*)<\/mo>/g)].map(([, sign]) => sign)).toEqual([...'(]{⟩⌈⌋⏞']);
    });

    it('letters keep their alphabet, and the forms of phi their difference', () => {
      expect(normaliseMathml(`<math>${drawn.letters}</math>`)).toBe(
        '<math><mi>ϕ</mi><mi>φ</mi><mi>ϵ</mi><mi>x</mi><mi mathvariant="normal">d</mi>' +
          '<mi mathvariant="script">L</mi><mi mathvariant="bold">v</mi><mi mathvariant="double-struck">R</mi><mi>h</mi></math>',
      );
    });

    it('a matrix has its cells', () => {
      expect(drawn.matrix).toBe(
        '<mtable><mtr><mtd><mn>1</mn></mtd><mtd><mn>2</mn></mtd></mtr><mtr><mtd><mn>3</mn></mtd><mtd><mn>4</mn></mtd></mtr></mtable>',
      );
    });
  });

  it('a formula that is parted where a line may break is one', async () => {
    const [markup] = await mathJax('mathjax', [
      { tex: 'a+b=c', display: false, output: 'svg', assistive: false },
    ]);
    expect(markup!.match(/<svg/g)!.length).toBeGreaterThan(1);
    expect(normaliseMathml(`<math>${rebuilt(markup!)}</math>`)).toBe(
      '<math><mi>a</mi><mo>+</mo><mi>b</mi><mo>=</mo><mi>c</mi></math>',
    );
  });

  it('what is not understood is not guessed at', () => {
    expect(rebuilt('<p>x</p>')).toBeNull();
    expect(
      rebuilt('<mjx-math><mjx-mmultiscripts><mjx-mi>x</mjx-mi></mjx-mmultiscripts></mjx-math>'),
    ).toBeNull();
    expect(rebuilt('<mjx-math><mjx-msup><mjx-mi>x</mjx-mi></mjx-msup></mjx-math>')).toBeNull();
    expect(rebuilt('<mjx-math><mjx-msup></mjx-msup></mjx-math>')).toBeNull();
  });
});
