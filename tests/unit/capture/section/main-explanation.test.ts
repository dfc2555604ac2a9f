// @vitest-environment jsdom
import katex from 'katex';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { mainExplanation } from '#lib/capture/section/main-explanation.ts';
import { passageOfParts, readParts } from '#lib/capture/section/parts.ts';
import { renderPage } from '#tests/tools/demo/layout.ts';
import { lessons } from '#tests/tools/demo/pages.ts';
import { show } from '../select.ts';

afterEach(() => {
  vi.restoreAllMocks();
});

/** What is found in the document; null when nothing is. */
function found(): { text: string; html: string } | null {
  const stretch = mainExplanation(document);
  return stretch && passageOfParts(readParts(document, stretch));
}

const sentence = 'Long waves outrun short ones in deep water, since gravity acts on all of them alike, ';
const prose = `<p>${sentence.repeat(4)}</p>`;

describe('on learning pages', () => {
  const articles = lessons.map(({ article }) => article).filter(({ markup }) => /katex|mathml/.test(markup));
  it.each(
    articles
      .filter(({ path }) => /pressure|far-shore/.test(path))
      .map((article) => [article.path, article] as const),
  )(
    '%s is read whole, each formula once, and nothing around it',
    async (_path, article) => {
      const page = new DOMParser().parseFromString(await renderPage(article, articles), 'text/html');
      document.head.innerHTML = page.head.innerHTML;
      show(page.body.innerHTML);
      const { text, html } = found()!;
      // MathML stands for each formula once: by itself or inside what KaTeX made.
      const formulas = document.querySelectorAll('article math').length;
      expect(html.match(/<math/g)).toHaveLength(formulas);
      for (const heading of document.querySelectorAll('article h2'))
        expect(text).toContain(heading.textContent.trim());
      for (const cell of document.querySelectorAll('article td:not(:has(math, sup, sub))'))
        expect(text).toContain(cell.textContent.trim());
      for (const around of document.querySelectorAll(
        'nav a:not([aria-current]), footer p, header strong, .byline',
      ))
        expect(text).not.toContain(around.textContent.trim());
    },
    60_000,
  );
});

it('what stands between is left out, with the rest kept', () => {
  show(
    `<div class="content">${prose}<div class="share-tools"><a href="/x">Send</a> <a href="/y">Print</a></div>` +
      `${prose}<div class="related sidebar"><a href="/z">More like this</a></div>${prose}</div>`,
  );
  const { text } = found()!;
  expect(text.match(/Long waves/g)).toHaveLength(12);
  expect(text).not.toMatch(/Send|Print|More like/);
});

it('where the page says which part is its content, what was passed over there is kept, but no ways elsewhere', () => {
  const short = '<p>So it is.</p>';
  const links = '<ul><li><a href="/x">Tides</a></li><li><a href="/y">Currents</a></li></ul>';
  show(
    `<main><div>${prose}${prose}</div><h2>Then</h2>${short}${links}<div class="comments">Thanks!</div></main>` +
      '<p>Write to us.</p>',
  );
  const { text } = found()!;
  expect(text).toContain('Then\nSo it is.');
  expect(text).not.toMatch(/Tides|Thanks|Write/);
});

it('headings of what is kept are kept', () => {
  show(
    `<div><h1>Waves</h1><h2>A</h2><h3>B</h3><div class="text">${prose}${prose}</div></div>` +
      '<div class="sidebar"><h2>News</h2><p>x</p></div>',
  );
  expect(found()!.text).toMatch(/^A\nB\nLong waves/);
  expect(found()!.text).not.toMatch(/News/);
});

it('a formula that stands alone in a box of its own is part of it', () => {
  const box = `<div class="equation">${katex.renderToString('c^2', { displayMode: true })}</div>`;
  show(`<div class="content">${prose}${box}${prose}</div>`);
  expect(found()!.text).toContain('\\[ c^2 \\]');
});

it('so is a remark, and text in a box without a paragraph', () => {
  show(`<article>${prose}<div class="remark">${prose}</div><div>${sentence}</div>${prose}</article>`);
  expect(found()!.text.match(/Long waves/g)).toHaveLength(13);
});

it('the page stays as it is', () => {
  show(`<article><h1>a</h1>${prose}${katex.renderToString('c')}${prose}</article><script>1</script>`);
  const before = document.documentElement.outerHTML;
  mainExplanation(document);
  expect(document.documentElement.outerHTML).toBe(before);
});

it('where judging fails the part that the page names as main is taken', () => {
  show(`<nav>x</nav><main>${prose}</main>`);
  vi.spyOn(Document.prototype, 'cloneNode').mockImplementation(function (this: Document) {
    const copy = new DOMParser().parseFromString('<p>x</p>', 'text/html');
    const forbidden = () => {
      throw new TypeError('no parsing here');
    };
    Object.defineProperty(copy.body, 'innerHTML', { get: forbidden, set: forbidden });
    return copy;
  });
  const stretch = mainExplanation(document)!;
  expect(stretch.range.commonAncestorContainer).toBe(document.querySelector('main'));
});

it('where nothing explains anything there is none', () => {
  show('');
  expect(mainExplanation(document)).toBeNull();
});
