import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { text } from 'node:stream/consumers';
import katex from 'katex';
import temml from 'temml';

export interface Formula {
  tex: string;
  display: boolean;
}

/** What a page holds for each formula; null for one that the typesetter refuses. */
export type Markup = (string | null)[];

export interface MathJaxJob extends Formula {
  output: 'chtml' | 'svg';
  assistive: boolean;
}

/** Runs a typesetter in a process of its own. */
async function run(script: string, options: readonly string[], jobs: readonly object[]): Promise<Markup> {
  const child = spawn(process.execPath, [join(import.meta.dirname, script), ...options], {
    stdio: ['pipe', 'pipe', 'inherit'],
  });
  child.stdin.end(JSON.stringify(jobs));
  return JSON.parse(await text(child.stdout)) as Markup;
}

export const mathJax = (name: 'mathjax' | 'mathjax3', jobs: readonly MathJaxJob[]): Promise<Markup> =>
  run('typeset.mjs', [name], jobs);

export const mathJax2 = (
  output: 'CommonHTML' | 'SVG',
  assistive: boolean,
  formulas: readonly Formula[],
): Promise<Markup> => run('typeset2.mjs', assistive ? [output, 'assistive'] : [output], formulas);

export function orNull(render: () => string): string | null {
  try {
    return render();
  } catch {
    return null;
  }
}

const escaped = (words: string): string => words.replace(/&/g, '&amp;').replace(/"/g, '&quot;');

/** A way in which pages hold formulas. */
export interface Typesetter {
  name: string;
  /** What the page says of a formula besides its drawing, or what its drawing is enough for. */
  keeps: ('TeX' | 'MathML')[];
  typeset: (formulas: readonly Formula[]) => Promise<Markup>;
}

const mathJaxes = (name: 'mathjax' | 'mathjax3', title: string): Typesetter[] =>
  (['chtml', 'svg'] as const).flatMap((output) =>
    [true, false].map((assistive) => ({
      name: `${title}-${output}${assistive ? '-mathml' : ''}`,
      keeps: name === 'mathjax' ? ['TeX', 'MathML'] : ['MathML'],
      typeset: (formulas) =>
        mathJax(
          name,
          formulas.map((formula) => ({ ...formula, output, assistive })),
        ),
    })),
  );

export const TYPESETTERS: readonly Typesetter[] = [
  {
    name: 'katex',
    keeps: ['TeX', 'MathML'],
    typeset: async (formulas) =>
      formulas.map(({ tex, display }) =>
        orNull(() => katex.renderToString(tex, { displayMode: display, strict: false })),
      ),
  },
  ...mathJaxes('mathjax', 'mathjax-4'),
  ...mathJaxes('mathjax3', 'mathjax-3'),
  {
    name: 'mathjax-2-chtml-mathml',
    keeps: ['TeX', 'MathML'],
    typeset: (formulas) => mathJax2('CommonHTML', true, formulas),
  },
  { name: 'mathjax-2-chtml', keeps: ['TeX'], typeset: (formulas) => mathJax2('CommonHTML', false, formulas) },
  { name: 'mathjax-2-svg', keeps: ['TeX'], typeset: (formulas) => mathJax2('SVG', false, formulas) },
  {
    name: 'native-mathml',
    keeps: ['MathML'],
    typeset: async (formulas) =>
      formulas.map(({ tex, display }) =>
        orNull(() => temml.renderToString(tex, { displayMode: display, throwOnError: true })),
      ),
  },
  {
    name: 'image',
    keeps: ['TeX'],
    typeset: async (formulas) =>
      formulas.map(
        ({ tex, display }) => `<img class="math ${display ? 'block' : ''}" alt="${escaped(tex)}">`,
      ),
  },
];
