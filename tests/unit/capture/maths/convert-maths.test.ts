// @vitest-environment jsdom
import katex from 'katex';
import { beforeAll, describe, expect, it } from 'vitest';
import { allowOnly, serialise } from '#lib/capture/allow-only.ts';
import { convertMaths, texOf } from '#lib/capture/maths/convert-maths.ts';
import { lendDrawingReader } from '#lib/capture/maths/drawing-reader.ts';
import { readDrawing } from '#lib/capture/maths/drawn-maths.ts';
import { plainText } from '#lib/capture/plain-text.ts';
import { fragmentOf } from '../select.ts';
import { type Markup, mathJax, mathJax2 } from './typesetters.ts';

// As the script does in a page with formulas that are only drawn.
lendDrawingReader(readDrawing);

function converted(html: string): DocumentFragment {
  const fragment = fragmentOf(html);
  convertMaths(fragment);
  return allowOnly(fragment, document);
}

function onlyMath(fragment: DocumentFragment): Element {
  const all = fragment.querySelectorAll('math');
  expect(all).toHaveLength(1);
  return all[0]!;
}

// Shallow-water and Coriolis formulas, with a comparison sign, a root, a matrix and text in them.
const FORMULAS = [
  '\\omega^2 = g k \\tanh(k h)',
  'f = 2 \\Omega \\sin \\varphi',
  'a < b \\text{ if } \\sqrt[3]{x} \\ge 0',
  'c = \\sqrt{\\frac{g \\lambda}{2\\pi}}',
  '\\begin{pmatrix} 1 & 0 \\\\ 0 & 1 \\end{pmatrix}',
];

describe('KaTeX output', () => {
  it.each(FORMULAS)('becomes one <math> with the TeX of %s', (tex) => {
    const fragment = converted(`<p>so ${katex.renderToString(tex)} holds</p>`);
    const math = onlyMath(fragment);
    expect(texOf(math)).toBe(tex);
    expect(math.hasAttribute('display')).toBe(false);
    expect(fragment.querySelector('span')).toBeNull();
    expect(plainText(fragment)).toBe(`so \\( ${tex} \\) holds`);
  });

  it('keeps displayed formulas apart from inline ones', () => {
    const fragment = converted(katex.renderToString('p = \\rho g h', { displayMode: true }));
    expect(onlyMath(fragment).getAttribute('display')).toBe('block');
    expect(plainText(fragment)).toBe('\\[ p = \\rho g h \\]');
  });

  it('takes the structure of the MathML, not of the drawing', () => {
    const math = onlyMath(converted(katex.renderToString('\\frac{a}{b}')));
    expect(serialise(converted(katex.renderToString('\\frac{a}{b}')))).toBe(
      '<math><semantics><mrow><mfrac><mi>a</mi><mi>b</mi></mfrac></mrow>' +
        '<annotation encoding="application/x-tex">\\frac{a}{b}</annotation></semantics></math>',
    );
    expect(math.querySelectorAll('mfrac')).toHaveLength(1);
  });

  it('reads the characters where KaTeX wrote no MathML', () => {
    const fragment = converted(katex.renderToString('a+b', { output: 'html' }));
    expect(onlyMath(fragment).textContent).toBe('a+b');
  });

  it('reads the MathML where KaTeX drew nothing', () => {
    expect(texOf(onlyMath(converted(katex.renderToString('a+b', { output: 'mathml' }))))).toBe('a+b');
  });

  it('keeps boxed formulas, whose element MathML Core does not have', () => {
    const math = onlyMath(converted(katex.renderToString('\\frac{\\boxed{a}}{b}')));
    expect([...math.querySelector('mfrac')!.children].map((part) => part.localName)).toEqual(['mrow', 'mi']);
  });
});

describe('MathJax 4 output', () => {
  const jobs = FORMULAS.flatMap((tex, index) =>
    (['chtml', 'svg'] as const).flatMap((output) =>
      [true, false].map((assistive) => ({ tex, output, assistive, display: index % 2 === 1 })),
    ),
  );
  let markup: Markup = [];

  beforeAll(async () => {
    markup = await mathJax('mathjax', jobs);
  }, 60_000);

  it.each(jobs)('$output, assistive $assistive: $tex', (job) => {
    const html = markup[jobs.indexOf(job)]!;
    expect(html).toContain('mjx-container');
    expect(html.includes('mjx-assistive-mml')).toBe(job.assistive);
    const fragment = converted(`<p>so ${html} holds</p>`);
    const math = onlyMath(fragment);
    expect(texOf(math)).toBe(job.tex);
    expect(math.getAttribute('display')).toBe(job.display ? 'block' : null);
    expect(fragment.querySelector('svg, mjx-container, [data-latex], [class]')).toBeNull();
    const [open, close] = job.display ? ['\n\\[', '\\]\n'] : [' \\(', '\\) '];
    expect(plainText(fragment)).toBe(`so${open} ${job.tex} ${close}holds`);
  });

  it('has the structure where there is assistive MathML', () => {
    const index = jobs.findIndex((job) => job.tex.includes('frac') && job.assistive);
    expect(onlyMath(converted(markup[index]!)).querySelector('mfrac')).not.toBeNull();
  });
});

describe('MathJax 2 output', () => {
  it.each(['CommonHTML', 'SVG'] as const)(
    '%s, displayed and inline, with MathML beside it',
    async (output) => {
      const jobs = FORMULAS.map((tex, index) => ({ tex, display: index % 2 === 1 }));
      const markup = await mathJax2(output, true, jobs);
      expect(markup).toHaveLength(jobs.length);
      for (const [index, { tex, display }] of jobs.entries()) {
        const math = onlyMath(converted(`<div>so ${markup[index]} holds</div>`));
        expect(texOf(math)).toBe(tex);
        expect(math.getAttribute('display')).toBe(display ? 'block' : null);
        expect(math.querySelector('mtext:only-child')).toBeNull();
      }
    },
    60_000,
  );
});

describe('other typesetters', () => {
  const script = '<script type="math/tex" id="MathJax-Element-1">a^2</script>';
  const mathml =
    '&lt;math&gt;&lt;msup&gt;&lt;mi&gt;a&lt;/mi&gt;&lt;mn&gt;2&lt;/mn&gt;&lt;/msup&gt;&lt;/math&gt;';

  it('MathML in an attribute and TeX behind', () => {
    const fragment = converted(
      `<p>so <span class="MathJax_Preview">[math]</span><span class="MathJax" data-mathml="${mathml}">a2</span>${script} holds</p>`,
    );
    expect(serialise(fragment)).toBe(
      '<p>so <math><semantics><msup><mi>a</mi><mn>2</mn></msup>' +
        '<annotation encoding="application/x-tex">a^2</annotation></semantics></math> holds</p>',
    );
  });

  it('displayed, TeX alone', () => {
    const fragment = converted(
      '<div class="MathJax_Display"><span class="MathJax">a2</span></div>' +
        '<script type="math/tex; mode=display">a^2</script>',
    );
    expect(onlyMath(fragment).getAttribute('display')).toBe('block');
    expect(plainText(fragment)).toBe('\\[ a^2 \\]');
  });

  it('TeX in a script that was never typeset', () => {
    expect(plainText(converted(`so ${script} holds`))).toBe('so \\( a^2 \\) holds');
  });

  it('glyphs drawn by class name or outline alone', () => {
    const glyphs = '<mjx-c class="mjx-c1D44E"></mjx-c><mjx-c class="mjx-c2B TEX-A"></mjx-c>';
    expect(plainText(converted(`<mjx-container>${glyphs}</mjx-container>`))).toBe('a+');
    expect(plainText(converted('<mjx-container><svg><use data-c="3C0"></use></svg></mjx-container>'))).toBe(
      'π',
    );
  });

  it('the spoken form where nothing else is known', () => {
    expect(plainText(converted('<mjx-container aria-label="a squared"></mjx-container>'))).toBe('a squared');
  });

  it('a drawing with names for its parts is rebuilt', () => {
    const drawn =
      '<mjx-math><mjx-msup><mjx-mi><mjx-c class="mjx-c1D44E"></mjx-c></mjx-mi><mjx-script><mjx-mn>' +
      '<mjx-c class="mjx-c32"></mjx-c></mjx-mn></mjx-script></mjx-msup></mjx-math>';
    expect(serialise(converted(`<mjx-container>${drawn}</mjx-container>`))).toBe(
      '<math><msup><mi>a</mi><mn>2</mn></msup></math>',
    );
  });

  it('pictures with TeX in place of words', () => {
    const fragment = converted('<p>so <img class="tex" alt="\\frac{a}{b}" src="x.png"> holds</p>');
    expect(plainText(fragment)).toBe('so \\( \\frac{a}{b} \\) holds');
    expect(plainText(converted('<p>a <img alt="bridge_2 at dusk" src="x.png"> here</p>'))).toBe(
      'a bridge_2 at dusk here',
    );
  });

  it('MathML beside a picture of it', () => {
    const fragment = converted(
      '<span class="mwe-math-element"><span style="display: none;"><math alttext="{\\displaystyle a_{1}}">' +
        '<semantics><mrow><msub><mi>a</mi><mn>1</mn></msub></mrow>' +
        '<annotation encoding="application/x-tex">{\\displaystyle a_{1}}</annotation></semantics></math></span>' +
        '<img alt="{\\displaystyle a_{1}}" src="https://example.invalid/a.svg"></span>',
    );
    expect(plainText(fragment)).toBe('\\( a_{1} \\)');
    expect(fragment.querySelector('msub')).not.toBeNull();
  });

  it('native MathML without TeX stays as it is', () => {
    const html = '<math display="block"><mi>a</mi><mo>=</mo><mn>2</mn></math>';
    expect(serialise(converted(html))).toBe(html);
    expect(texOf(onlyMath(converted(html)))).toBeNull();
  });

  it('an empty container leaves nothing', () => {
    expect(serialise(converted('a<mjx-container></mjx-container>b'))).toBe('ab');
  });
});
