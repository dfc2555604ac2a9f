// @vitest-environment jsdom
import fc from 'fast-check';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { isKeptAttribute, isKeptElement } from '#lib/capture/allow-list.ts';
import { allowOnly } from '#lib/capture/allow-only.ts';
import { cleanPassage, serialise } from '#lib/capture/sanitise.ts';
import { HOSTILE } from './hostile.ts';
import { fragmentOf } from './select.ts';

const clean = (html: string): string => serialise(cleanPassage(html, document));
const light = (html: string): string => serialise(allowOnly(html, document));

/** Whatever stands in the markup off the allow-list once a parser has read it. */
function strangers(html: string): string[] {
  const found: string[] = [];
  const walker = document.createTreeWalker(fragmentOf(html), NodeFilter.SHOW_ALL);
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    if (node.nodeType === Node.TEXT_NODE) continue;
    if (!(node instanceof window.Element) || !isKeptElement(node)) {
      found.push(node.nodeName);
      continue;
    }
    for (const attribute of node.attributes) {
      if (!isKeptAttribute(node, attribute))
        found.push(`${node.nodeName} ${attribute.name}=${attribute.value}`);
    }
  }
  return found;
}

describe.each([
  ['cleanPassage', clean],
  ['allowOnly', light],
])('%s on hostile markup', (_name, cleaner) => {
  it.each(HOSTILE)('leaves nothing off the list: %s', (html) => {
    const once = cleaner(html);
    expect(strangers(once)).toEqual([]);
    expect(once).not.toMatch(/<(script|style|iframe|a|img|svg|form|object|template|noscript)\b/i);
    expect(once).not.toMatch(/<[^>]*\b(on\w+|href|src|style|id|class|name)\s*=/i);
    expect(cleaner(once)).toBe(once);
    expect(clean(once)).toBe(once);
  });

  it.each(HOSTILE)('says the same for nodes: %s', (html) => {
    const fragment = fragmentOf(html);
    const before = fragment.textContent;
    const cleaned = cleaner === clean ? cleanPassage(fragment, document) : allowOnly(fragment, document);
    expect(strangers(serialise(cleaned))).toEqual([]);
    expect(fragment.textContent).toBe(before);
  });

  it('stands in nested markup too', () => {
    const all = HOSTILE.join('');
    const once = cleaner(
      `<table><tr><td><ul><li><math><mtext>${all}</mtext></math>${all}</li></ul></td></tr></table>`,
    );
    expect(strangers(once)).toEqual([]);
    expect(cleaner(once)).toBe(once);
  });
});

describe('nodes that no parser makes', () => {
  it.each([
    ['a paragraph in a paragraph', ['p', 'p']],
    ['a table in a paragraph in a table', ['table', 'p', 'table', 'tr', 'td']],
    ['MathML outside a formula', ['p', 'math:mi']],
    ['HTML in MathML', ['math:math', 'math:mrow', 'p']],
    ['a formula in a formula', ['math:math', 'math:math']],
    ['an element of no namespace', ['none:p', 'em']],
    ['HTML names in MathML', ['math:math', 'math:mtext', 'math:p']],
    ['MathML names in HTML', ['mi', 'math', 'p']],
  ])('%s', (_what, names) => {
    const fragment = document.createDocumentFragment();
    let parent: ParentNode = fragment;
    for (const name of names) {
      const [space, local] = name.includes(':') ? name.split(':') : ['html', name];
      const namespaces: Record<string, string | null> = {
        html: 'http://www.w3.org/1999/xhtml',
        math: 'http://www.w3.org/1998/Math/MathML',
        none: null,
      };
      const element: Element = document.createElementNS(namespaces[space!]!, local!);
      parent.append(element);
      parent = element;
    }
    parent.append('<img src=x onerror=evil()>');
    const once = serialise(cleanPassage(fragment, document));
    expect(strangers(once)).toEqual([]);
    expect(once).toContain('&lt;img');
    expect(clean(once)).toBe(once);
  });
});

describe('cleaning twice is cleaning once', () => {
  const name = fc.constantFrom(
    ...'p div span b em a table tr td th tbody caption ul ol li dl dt dd pre code h2 math mi mrow mtext mfrac semantics'.split(
      ' ',
    ),
    ...'annotation svg style script template noscript form button select option img br hr section ruby rt font title xmp'.split(
      ' ',
    ),
    ...'details figure x-y mglyph annotation-xml foreignObject textarea iframe body html'.split(' '),
  );
  const attribute = fc.constantFrom(
    '',
    ' lang=en',
    ' dir=rtl',
    ' id=a',
    ' class=b',
    ' onclick=evil()',
    ' start=3',
    ' title="a>b"',
    ' hidden',
    ' encoding=application/x-tex',
    ' encoding=text/html',
    ' display=block',
    ' alt="x &lt;b&gt;"',
    ' name=matches',
  );
  const text = fc.constantFrom(
    'a',
    ' ',
    '\n',
    '\n\nb',
    '&lt;img src=x onerror=evil()&gt;',
    '--&gt;',
    ']]>',
    '\u{1f30a}',
    '&amp;lt;',
    '\r',
    '\t',
  );
  const piece = fc.oneof(
    text,
    fc.tuple(name, attribute).map(([tag, attributes]) => `<${tag}${attributes}>`),
    name.map((tag) => `</${tag}>`),
    fc.constantFrom('<!--', '-->', '<![CDATA[', '<?x', '<'),
  );
  const markup = fc.array(piece, { maxLength: 25 }).map((pieces) => pieces.join(''));

  it('for any run of tags', () => {
    fc.assert(
      fc.property(markup, (html) => {
        const once = clean(html);
        expect(strangers(once)).toEqual([]);
        expect(clean(once)).toBe(once);
        expect(light(once)).toBe(once);
      }),
      { numRuns: 100 },
    );
  }, 60_000);

  it('for what was captured without the second judgement', () => {
    fc.assert(
      fc.property(markup, (html) => {
        const once = serialise(allowOnly(fragmentOf(html), document));
        expect(strangers(once)).toEqual([]);
        expect(clean(once)).toBe(once);
      }),
      { numRuns: 100 },
    );
  }, 60_000);
});

describe('what is kept', () => {
  it.each([
    ['<p lang="cy" dir="ltr">a <em>b</em><br>c</p>'],
    ['<h2>a</h2><hr><blockquote><p>b</p></blockquote>'],
    ['<ol start="3"><li value="5">a</li></ol><dl><dt>b</dt><dd>c</dd></dl>'],
    [
      '<table><caption>a</caption><thead><tr><th scope="col" colspan="2">b</th></tr></thead><tbody><tr><td rowspan="2">c</td></tr></tbody></table>',
    ],
    ['<pre><code>a\n  b</code></pre><p>H<sub>2</sub>O <abbr title="parts per thousand">ppt</abbr></p>'],
    ['<figure><p>a</p><figcaption>b</figcaption></figure>'],
    ['<p>\u6d77 \u0628\u062d\u0631 \u{1f30a} a &amp;&lt; b</p>'],
    [
      '<math display="block"><mfrac linethickness="0"><mi mathvariant="normal">a</mi><mo stretchy="false" lspace="0.2em">+</mo></mfrac></math>',
    ],
  ])('stays as it is: %s', (html) => expect(clean(html)).toBe(html));

  it.each([
    ['<div>a</div><div>b</div>', '<p>a</p><p>b</p>'],
    ['<section>a<div>b</div><ul><li><div>c</div></li></ul></section>', '<p>a</p><p>b</p><ul><li>c</li></ul>'],
    ['<p>see <a href="/x">the page</a></p>', '<p>see the page</p>'],
    ['<img alt="a wave"> <img src=x>', 'a wave '],
    ['<del>a</del><ins>b</ins><tt>c</tt>', '<s>a</s><u>b</u><code>c</code>'],
    ['<p>a<span class="x">b</span><span lang="fr">c</span></p>', '<p>ab<span lang="fr">c</span></p>'],
    [
      '<p>a<i aria-hidden="true" class="icon">x</i><span hidden>y</span><b style="display: none">z</b></p>',
      '<p>a</p>',
    ],
    ['<nav><a href=/>home</a></nav><p>a</p>', '<p>a</p>'],
    ['<ruby>\u6c34<rp>(</rp><rt>mizu</rt><rp>)</rp></ruby>', '\u6c34(mizu)'],
    [
      '<math><mfenced open="[" close=")"><mi>a</mi><mi>b</mi></mfenced></math>',
      '<math><mrow><mo>[</mo><mi>a</mi><mo>,</mo><mi>b</mi><mo>)</mo></mrow></math>',
    ],
    [
      '<math><mtable><mlabeledtr><mtd>(1)</mtd><mtd><mi>a</mi></mtd></mlabeledtr></mtable></math>',
      '<math><mtable><mtr><mtd><mi>a</mi></mtd><mtd>(1)</mtd></mtr></mtable></math>',
    ],
    ['<math><maction><mi>a</mi><mi>b</mi></maction></math>', '<math><mrow><mi>a</mi></mrow></math>'],
    ['', ''],
  ])('%s becomes %s', (html, kept) => expect(clean(html)).toBe(kept));
});

describe('where a page forbids parsing strings', () => {
  afterEach(() => vi.restoreAllMocks());

  it('works on nodes alone', () => {
    const fragment = fragmentOf('<div onclick="evil()">a<script>evil()</script></div>');
    const refuse = vi.spyOn(window.Element.prototype, 'innerHTML', 'set').mockImplementation(() => {
      throw new TypeError('This document requires TrustedHTML');
    });
    const cleaned = allowOnly(fragment, document);
    expect(refuse).toHaveBeenCalled();
    expect(serialise(cleaned)).toBe('<p>a</p>');
    expect(serialise(cleanPassage(fragment, document))).toBe('<p>a</p>');
    expect(allowOnly('<b>a</b>', document).textContent).toBe('<b>a</b>');
  });
});

it('neither loads nor runs anything while it works', () => {
  const fragment = document.createDocumentFragment();
  const image = document.createElement('img');
  const loads = vi.fn();
  Object.defineProperty(window.HTMLImageElement.prototype, 'src', { set: loads, configurable: true });
  image.setAttribute('onerror', 'globalThis.evil = true');
  fragment.append(image);
  cleanPassage(fragment, document);
  expect(loads).not.toHaveBeenCalled();
  expect('evil' in globalThis).toBe(false);
});
