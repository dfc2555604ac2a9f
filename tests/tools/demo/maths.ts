import { createRequire } from 'node:module';
import katex from 'katex';
import type { Markup } from './types.ts';

/** The parts of MathJax that are used here; its package ships no types. */
interface MathDocument {
  outputJax: { styleSheet(doc: MathDocument): unknown };
  convertPromise(tex: string, options: { display: boolean }): Promise<unknown>;
}
interface MathJaxGlobal {
  init(config: object): Promise<void>;
  config: { startup: { output: string }; options: Record<string, unknown> };
  startup: {
    document: MathDocument;
    defaultReady(): void;
    getComponents(): void;
    adaptor: {
      outerHTML(node: unknown): string;
      innerHTML(node: unknown): string;
      cssText(node: unknown): string;
    };
  };
}

interface MathJaxPair {
  chtml: MathDocument;
  svg: MathDocument;
  adaptor: MathJaxGlobal['startup']['adaptor'];
}

export const KATEX_URL = '/shared/katex';
export const MATHJAX_URL = '/shared/mathjax';
export const MATHJAX_FONT_URL = '/shared/mathjax-font';

const startMathJax = async (): Promise<MathJaxPair> => {
  const require = createRequire(import.meta.url);
  const mathJax = require('mathjax') as MathJaxGlobal;
  await mathJax.init({
    loader: { load: ['input/tex', 'output/chtml', 'output/svg', 'a11y/assistive-mml'] },
    startup: {
      output: 'chtml',
      typeset: false,
      ready: () => {
        // The assistive part sets an option of the menu, which does not exist here.
        delete mathJax.config.options['menuOptions'];
        mathJax.startup.defaultReady();
      },
    },
    options: { enableAssistiveMml: true },
    chtml: { fontURL: `${MATHJAX_FONT_URL}/chtml/woff2` },
  });
  const { startup } = mathJax;
  const chtml = startup.document;
  // The same start-up makes a second document when it is asked for the other output.
  mathJax.config.startup.output = 'svg';
  startup.getComponents();
  return { chtml, svg: startup.document, adaptor: startup.adaptor };
};

let pair: Promise<MathJaxPair> | undefined;
const mathJax = (): Promise<MathJaxPair> => (pair ??= startMathJax());

interface Rendered {
  html: string;
  /** Style sheets that the rendered maths needs. */
  head: string;
}

const TEX = /\\\((?<inline>.+?)\\\)|\\\[(?<block>.+?)\\\]/gs;

const replaceTex = async (
  html: string,
  render: (tex: string, display: boolean) => string | Promise<string>,
): Promise<string> => {
  let out = '';
  let at = 0;
  for (const match of html.matchAll(TEX)) {
    const display = match.groups?.['block'] !== undefined;
    const tex = (match.groups?.['block'] ?? match.groups?.['inline'] ?? '').trim();
    out += html.slice(at, match.index) + (await render(tex, display));
    at = match.index + match[0].length;
  }
  return out + html.slice(at);
};

const renderKatex = async (html: string): Promise<Rendered> => ({
  html: await replaceTex(html, (tex, displayMode) =>
    katex.renderToString(tex, { displayMode, output: 'htmlAndMathml', throwOnError: true }),
  ),
  head: `<link rel="stylesheet" href="${KATEX_URL}/katex.min.css">`,
});

const renderMathJax = async (html: string, output: 'chtml' | 'svg'): Promise<Rendered> => {
  const { [output]: doc, adaptor } = await mathJax();
  const rendered = await replaceTex(html, async (tex, display) =>
    adaptor.outerHTML(await doc.convertPromise(tex, { display })),
  );
  const css = adaptor.cssText(doc.outputJax.styleSheet(doc));
  return { html: rendered, head: `<style id="MJX-${output.toUpperCase()}-styles">${css}</style>` };
};

/** MathJax as most pages use it: the TeX is in the page and a script renders it in the browser. */
const liveMathJax = (html: string): Rendered => {
  const config = {
    loader: { paths: { mathjax: MATHJAX_URL, 'mathjax-newcm': MATHJAX_FONT_URL } },
    output: { fontPath: MATHJAX_FONT_URL },
  };
  return {
    html,
    head: `<script>window.MathJax = ${JSON.stringify(config)};</script>
<script defer src="${MATHJAX_URL}/tex-mml-chtml.js"></script>`,
  };
};

export const renderMaths = async (html: string, markup: Markup): Promise<Rendered> => {
  if (markup === 'katex') return renderKatex(html);
  if (markup === 'mathjax-chtml') return renderMathJax(html, 'chtml');
  if (markup === 'mathjax-svg') return renderMathJax(html, 'svg');
  if (markup === 'mathjax-live') return liveMathJax(html);
  return { html, head: '' };
};

/** A stand-alone SVG picture of an equation, for sites that show maths as images. */
export const texImage = async (tex: string): Promise<string> => {
  const { svg, adaptor } = await mathJax();
  const container = adaptor.outerHTML(await svg.convertPromise(tex, { display: true }));
  const picture = /<svg.*?<\/svg>/s.exec(container)?.[0];
  if (!picture) throw new Error(`No picture was made of ${tex}`);
  return picture.replaceAll('currentColor', '#123');
};
