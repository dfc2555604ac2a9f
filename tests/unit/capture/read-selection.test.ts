// @vitest-environment jsdom
import katex from 'katex';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import * as limits from '#lib/capture/limits.ts';
import { readRange, readSelection } from '#lib/capture/read-selection.ts';
import { cleanPassage, serialise } from '#lib/capture/sanitise.ts';
import { findPassage } from '#lib/capture/find/find-passage.ts';
import { readPageText } from '#lib/capture/find/page-text.ts';
import { Clip, LONGEST_PASSAGE, LONGEST_PASSAGE_HTML, Passage } from '#lib/model/clip.ts';
import { Selector } from '#lib/model/selector.ts';
import { StudentError } from '#lib/model/student-error.ts';
import { find, marked, rangeOver, select, show } from './select.ts';

const htmlOf = (range: Range): string => readRange(document, range).passage.html;
const textOf = (range: Range): string => readRange(document, range).passage.text;

function errorOf(work: () => unknown): StudentError {
  try {
    work();
  } catch (error) {
    if (error instanceof StudentError) return error;
    throw error;
  }
  throw new Error('no error');
}

beforeEach(() => {
  document.getSelection()?.removeAllRanges();
  document.documentElement.removeAttribute('lang');
  document.documentElement.removeAttribute('dir');
  show('');
});

describe('readSelection', () => {
  it('gives a passage, selectors, headings and page that the model accepts', () => {
    show('<h1>Waves</h1><h2>Deep water</h2><p id="a">Long waves <b>outrun</b> short ones.</p>');
    select(rangeOver('#a'));
    const capture = readSelection(document);
    expect(Passage.parse(capture.passage)).toEqual({
      text: 'Long waves outrun short ones.',
      html: 'Long waves <b>outrun</b> short ones.',
    });
    expect(capture.selectors.map((each) => Selector.parse(each).type)).toEqual([
      'TextQuoteSelector',
      'TextPositionSelector',
      'RangeSelector',
    ]);
    expect(Clip.shape.headings.parse(capture.headings)).toEqual(['Deep water', 'Waves']);
    expect(capture.page).toEqual({
      kind: 'page',
      published: '',
      licence: '',
      url: 'http://localhost:3000/',
      title: 'Waves',
      site: 'localhost',
      author: '',
    });
    expect(findPassage(readPageText(document.body), capture.selectors)?.range.toString()).toBe(
      'Long waves outrun short ones.',
    );
  });

  it('leaves page and selection as they were', () => {
    show(`<p id="a">so ${katex.renderToString('a<b')} holds<script>1</script></p>`);
    const range = rangeOver('#a');
    range.setStart(find('#a .mord').firstChild!, 0);
    select(range);
    const before = document.body.innerHTML;
    readSelection(document);
    expect(document.body.innerHTML).toBe(before);
    const kept = document.getSelection()!.getRangeAt(0);
    expect(kept.startContainer).toBe(find('#a .mord').firstChild);
  });

  it.each([
    ['nothing', ''],
    ['white space', '<p id="a"> \n&nbsp;</p>'],
    ['a script', '<p id="a"><script>let a;</script></p>'],
    ['a picture', '<p id="a"><img alt="a wave"></p>'],
    ['hidden text', '<p id="a"><span style="display:none">a</span></p>'],
  ])('says so when it holds %s', (_what, html) => {
    show(html);
    if (html) select(rangeOver('#a'));
    expect(errorOf(() => readSelection(document))).toMatchObject({ message: 'errorSelectionEmpty' });
  });

  it('says so when the caret only stands somewhere', () => {
    show('<p id="a">text</p>');
    document.getSelection()!.collapse(find('#a').firstChild, 2);
    expect(errorOf(() => readSelection(document)).message).toBe('errorSelectionEmpty');
  });

  it.each(['<textarea id="a">some text</textarea>', '<input id="a" value="some text">'])(
    'says so when the text is in a field: %s',
    (html) => {
      show(html);
      const field = find('#a') as HTMLInputElement;
      field.focus();
      field.setSelectionRange(0, 4);
      expect(errorOf(() => readSelection(document)).message).toBe('errorSelectionInField');
      field.setSelectionRange(2, 2);
      expect(errorOf(() => readSelection(document)).message).toBe('errorSelectionEmpty');
    },
  );

  it('joins several ranges in document order', () => {
    show('<p id="a">one</p><p>two</p><p id="c">three</p>');
    const [first, second] = [rangeOver('#a'), rangeOver('#c')];
    const ranges = [second, first];
    // jsdom, like Chromium, keeps one range only.
    const several = { rangeCount: 2, getRangeAt: (index: number) => ranges[index]! };
    const doc = new Proxy(document, {
      get(target, name) {
        if (name === 'getSelection') return () => several;
        const value: unknown = Reflect.get(target, name, target);
        return typeof value === 'function' ? value.bind(target) : value;
      },
    });
    const capture = readSelection(doc);
    expect(capture.passage).toEqual({ text: 'one\nthree', html: 'one<br>three' });
    expect(capture.ranges).toHaveLength(2);
    expect(capture.range.toString()).toBe('one');
    show('<table><tbody><tr><td>a</td><td>b</td></tr><tr><td>c</td><td>d</td></tr></tbody></table>');
    ranges.splice(
      0,
      2,
      ...[...document.querySelectorAll('tr')].map((row) => {
        const cell = document.createRange();
        cell.setStart(row, 1);
        cell.setEnd(row, 2);
        return cell;
      }),
    );
    expect(readSelection(doc).passage.html).toBe(
      '<table><tbody><tr><td>b</td></tr><tr><td>d</td></tr></tbody></table>',
    );
  });
});

describe('length', () => {
  it('has the limits of the model', () => {
    expect(limits.LONGEST_PASSAGE).toBe(LONGEST_PASSAGE);
    expect(limits.LONGEST_PASSAGE_HTML).toBe(LONGEST_PASSAGE_HTML);
    const heading = (length: number) => Clip.shape.headings.safeParse(['x'.repeat(length)]).success;
    expect([heading(limits.LONGEST_HEADING), heading(limits.LONGEST_HEADING + 1)]).toEqual([true, false]);
  });

  it('refuses two million characters at once, before any copy is made', () => {
    show(`<div id="a">${`<p>${'salt water is heavy '.repeat(50)}</p>`.repeat(2000)}</div>`);
    const range = rangeOver('#a');
    const copies = vi.spyOn(document.implementation, 'createHTMLDocument');
    const error = errorOf(() => readRange(document, range));
    expect(copies).not.toHaveBeenCalled();
    expect(error.message).toBe('errorSelectionTooLong');
    expect(error.values).toEqual(['2000000', String(LONGEST_PASSAGE)]);
  });

  it('takes exactly the longest passage and not one more', () => {
    show(`<p id="a">${'x'.repeat(LONGEST_PASSAGE)}</p>`);
    expect(textOf(rangeOver('#a'))).toHaveLength(LONGEST_PASSAGE);
    find('#a').append('y');
    expect(errorOf(() => readRange(document, rangeOver('#a'))).values).toEqual(['100001', '100000']);
  });

  it('does not count what is not read', () => {
    show(`<p id="a">a<script>${'x'.repeat(200_000)}</script>${' '.repeat(200_000)}b</p>`);
    expect(textOf(rangeOver('#a'))).toBe('a b');
  });

  it('refuses markup too heavy to keep', () => {
    show(`<p id="a">${`<abbr title="${'x'.repeat(490)}">y</abbr>`.repeat(3000)}</p>`);
    const { message, values } = errorOf(() => readRange(document, rangeOver('#a')));
    expect(message).toBe('errorSelectionTooLong');
    expect(values[1]).toBe(String(LONGEST_PASSAGE_HTML));
  }, 60_000);
});

describe('formulas at the ends', () => {
  const formula = katex.renderToString('\\frac{a}{b}');
  const tex = '\\( \\frac{a}{b} \\)';

  it('are taken whole when a selection starts or ends inside', () => {
    show(`<p id="a">so ${formula} and ${formula} hold</p>`);
    const range = document.createRange();
    const [first, last] = document.querySelectorAll('.katex');
    range.setStart(first!.querySelectorAll('.mord')[1]!, 0);
    range.setEnd(last!.querySelector('.mord')!, 1);
    expect(textOf(range)).toBe(`${tex} and ${tex}`);
    expect(readRange(document, range).range.toString()).toContain('\\frac');
  });

  it('are taken whole when the selection lies within one', () => {
    show(`<p>so ${katex.renderToString('\\frac{a}{b}', { displayMode: true })} holds</p>`);
    const range = document.createRange();
    range.selectNodeContents(find('mfrac mi'));
    expect(textOf(range)).toBe('\\[ \\frac{a}{b} \\]');
  });

  it('bring the TeX that stands behind them', () => {
    show('<p>so <span class="MathJax" id="m">a2</span><script type="math/tex">a^2</script> holds</p>');
    const inside = rangeOver('#m');
    expect(textOf(inside)).toBe('\\( a^2 \\)');
    const whole = document.createRange();
    whole.selectNode(find('#m'));
    expect(textOf(whole)).toBe('\\( a^2 \\)');
  });
});

describe('context', () => {
  it.each([
    ['<p>a <em>b [c] d</em></p>', '<em>c</em>'],
    ['<p>H<sub>[2]</sub></p>', '<sub>2</sub>'],
    ['<p><strong>a <a href="/"><code>[b] c</code></a></strong></p>', '<strong><code>b</code></strong>'],
    ['<ul><li>a</li><li>b [c</li><li>d] e</li></ul>', '<ul><li>c</li><li>d</li></ul>'],
    ['<ol><li>a</li><li>b [c</li><li>d] e</li></ol>', '<ol start="2"><li>c</li><li>d</li></ol>'],
    ['<ol start="4"><li>a</li><li>[b</li></ol><p>c]</p>', '<ol start="5"><li>b</li></ol><p>c</p>'],
    ['<ol><li>[a</li><li>b]</li></ol>', '<ol><li>a</li><li>b</li></ol>'],
    ['<ul><li>a [b] c</li></ul>', 'b'],
    ['<dl><dt>[a</dt><dd>b]</dd></dl>', '<dl><dt>a</dt><dd>b</dd></dl>'],
    [
      '<table><tr><th>a</th></tr><tr><td>[b</td><td>c]</td></tr></table>',
      '<table><tbody><tr><td>b</td><td>c</td></tr></tbody></table>',
    ],
    [
      '<table><thead><tr><th>[a</th></tr></thead><tbody><tr><td>b]</td></tr></tbody></table>',
      '<table><thead><tr><th>a</th></tr></thead><tbody><tr><td>b</td></tr></tbody></table>',
    ],
    ['<table><tr><td>a [b] c</td></tr></table>', 'b'],
    ['<pre><code>a\n  [b\n  c] d</code></pre>', '<pre><code>b\n  c</code></pre>'],
    ['<pre><div>a [b</div><div>  c]</div></pre>', '<pre><p>b</p><p>  c</p></pre>'],
    ['<p>a [b</p><p>c]</p>', '<p>b</p><p>c</p>'],
    ['<p>[a</p><p>]b</p>', '<p>a</p>'],
    ['<h2>a[</h2><p>b]</p>', '<p>b</p>'],
    ['<blockquote><p>a [b] c</p></blockquote>', 'b'],
  ])('%s gives %s', (html, kept) => {
    const range = marked(html);
    expect(htmlOf(range)).toBe(kept);
    expect(serialise(cleanPassage(kept, document))).toBe(kept);
  });

  it('notes the language and direction around it', () => {
    document.documentElement.setAttribute('lang', 'ar');
    document.documentElement.setAttribute('dir', 'rtl');
    expect(htmlOf(marked('<p>[\u0628\u062d\u0631]</p>'))).toBe(
      '<span lang="ar" dir="rtl">\u0628\u062d\u0631</span>',
    );
    expect(htmlOf(marked('<p>[\u0628</p><p lang="en" dir="ltr">b]</p>'))).toBe(
      '<p lang="ar" dir="rtl">\u0628</p><p lang="en" dir="ltr">b</p>',
    );
  });

  it('reads CJK and emoji', () => {
    expect(readRange(document, marked('<p>[\u6d77\u6d41 \u{1f30a}]</p>')).passage.text).toBe(
      '\u6d77\u6d41 \u{1f30a}',
    );
  });
});

describe('what is not to be seen', () => {
  it.each([
    ['by the style sheet', '.x { display: none }'],
    ['by visibility', '.x { visibility: hidden }'],
    ['for screen readers only, by clip', '.x { position: absolute; clip: rect(0, 0, 0, 0) }'],
    ['for screen readers only, by clip-path', '.x { position: absolute; clip-path: inset(50%) }'],
    ['for screen readers only, by size', '.x { overflow: hidden; width: 1px; height: 1px }'],
    ['since it cannot be selected', '.x { user-select: none }'],
  ])('is left out: %s', (_how, css) => {
    show(`<style>${css}</style><p id="a">a <span class="x">copy</span>b</p>`);
    expect(textOf(rangeOver('#a'))).toBe('a b');
  });

  it('stays in a formula, whose MathML is hidden from sight on purpose', () => {
    show(`<style>.katex-mathml { display: none }</style><p id="a">so ${katex.renderToString('a')}</p>`);
    expect(textOf(rangeOver('#a'))).toBe('so \\( a \\)');
  });

  it('is taken where the whole page forbids selecting', () => {
    show('<style>body, body * { user-select: none }</style><p id="a">a <b>b</b></p>');
    expect(textOf(rangeOver('#a'))).toBe('a b');
  });
});

it('tells blocks from lines by their layout', () => {
  show(
    '<style>.b { display: block } div.i { display: inline }</style><p id="a"><span class="b">a</span><span class="b">b</span></p>',
  );
  expect(textOf(rangeOver('#a'))).toBe('a\nb');
  show('<style>.i { display: inline }</style><section id="a">a <div class="i">b</div> c</section>');
  expect(textOf(rangeOver('#a'))).toBe('a b c');
});

it('survives controls named after what a form has', () => {
  show('<form id="a"><input name="children"><input name="attributes"><input name="lang"><p>text</p></form>');
  const range = document.createRange();
  range.selectNode(find('#a'));
  expect(htmlOf(range)).toBe('<p>text</p>');
});
