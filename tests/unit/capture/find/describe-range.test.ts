// @vitest-environment jsdom
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { describeRange } from '#lib/capture/find/describe-range.ts';
import { findPassage } from '#lib/capture/find/find-passage.ts';
import { readPageText } from '#lib/capture/find/page-text.ts';
import { countPoints, lastPoints, unitOfPoint } from '#lib/capture/find/text-points.ts';
import type { Selector } from '#lib/model/selector.ts';
import { marked, show } from '../select.ts';

const findQuote = (root: Node, selectors: readonly Selector[]): Range | null =>
  findPassage(readPageText(root), selectors)?.range ?? null;

const roundTrip = (range: Range): string | undefined =>
  findQuote(document.body, describeRange(range, document.body))?.toString();

describe('describeRange', () => {
  // Source: W3C Web Annotation Data Model, Recommendation of 23 February 2017, 4.2.5 Text Position Selector: in the
  // alphabet, "efg" has start 4 and end 7.
  it('counts the alphabet as the recommendation does', () => {
    const range = marked('<p>abcd[efg]hijklmnopqrstuvwxyz</p>');
    expect(describeRange(range, document.body).slice(0, 2)).toEqual([
      { type: 'TextQuoteSelector', exact: 'efg', prefix: 'abcd', suffix: 'hijklmnopqrstuvwxyz' },
      { type: 'TextPositionSelector', start: 4, end: 7 },
    ]);
    const found = findQuote(document.body, [{ type: 'TextPositionSelector', start: 4, end: 7 }]);
    expect(found?.toString()).toBe('efg');
  });

  it('counts code points, not UTF-16 units', () => {
    const range = marked('<p>\u{1f30a}\u{1f30a}a[\u{1d44e}b]\u{1f41f}</p>');
    const [quote, position] = describeRange(range, document.body);
    expect(position).toMatchObject({ start: 3, end: 5 });
    expect(quote).toMatchObject({ exact: '\u{1d44e}b', prefix: '\u{1f30a}\u{1f30a}a', suffix: '\u{1f41f}' });
  });

  it('takes 64 code points of context and cuts no character in two', () => {
    const range = marked(`<p>${'\u{1f30a}'.repeat(80)}[x]${'\u{1f41f}'.repeat(80)}</p>`);
    const [quote] = describeRange(range, document.body);
    expect(quote.prefix).toBe('\u{1f30a}'.repeat(64));
    expect(quote.suffix).toBe('\u{1f41f}'.repeat(64));
  });

  it('takes more context where the quote stands more than once, up to 128', () => {
    const same = 'z'.repeat(50);
    const range = marked(`<p>1${same}wave${same}</p><p>2${same}[wave]${same}</p>`);
    const [quote] = describeRange(range, document.body);
    expect(quote.prefix).toHaveLength(64);
    expect(findQuote(document.body, [quote])?.startContainer.parentElement?.textContent).toContain('2');
  });

  it('spans elements, hidden text and ends between nodes', () => {
    show('<p id="a">one <em>two</em></p><script>3</script><p id="b">four</p>');
    const range = document.createRange();
    range.setStart(document.querySelector('#a')!, 1);
    range.setEnd(document.body, 3);
    const [quote, position] = describeRange(range, document.body);
    expect(quote.exact).toBe('two3four');
    expect(position).toMatchObject({ start: 4, end: 12 });
    expect(roundTrip(range)).toBe('two3four');
  });

  it('finds any range again', () => {
    show('<p>a\u{1f30a}b</p>\n<ul><li>\u6ce2</li><li>a\u{1f30a}b <b>c</b></li></ul>\u0628\u062d\u0631');
    const nodes: Node[] = [];
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_ELEMENT | NodeFilter.SHOW_TEXT);
    for (let node: Node | null = document.body; node; node = walker.nextNode()) nodes.push(node);
    const boundary = fc.constantFrom(...nodes).chain((node) => {
      const length = node.nodeType === Node.TEXT_NODE ? (node as Text).length : node.childNodes.length;
      return fc.tuple(fc.constant(node), fc.nat(length));
    });
    fc.assert(
      fc.property(boundary, boundary, (from, to) => {
        const range = document.createRange();
        range.setStart(...from);
        range.setEnd(...to);
        // No selection cuts a character in two.
        fc.pre(range.toString() !== '' && range.toString().isWellFormed());
        const [quote, position] = describeRange(range, document.body);
        expect(quote.exact).toBe(range.toString());
        expect([...quote.exact]).toHaveLength(position.end - position.start);
        const found = findQuote(document.body, [quote, position])!;
        expect(found.toString()).toBe(range.toString());
        expect(describeRange(found, document.body).slice(0, 2)).toEqual([quote, position]);
      }),
      { numRuns: 300 },
    );
  });
});

describe('findQuote', () => {
  it('follows the quote when the page has grown above it', () => {
    const selectors = describeRange(marked('<p>Tides. The [moon] pulls.</p>'), document.body);
    show('<p>New: moon landing.</p><p>Tides. The moon pulls.</p>');
    const found = findQuote(document.body, selectors)!;
    expect(found.toString()).toBe('moon');
    expect(found.startContainer.textContent).toBe('Tides. The moon pulls.');
  });

  it('takes the nearest of places that fit alike', () => {
    show('<p>moon</p><p>moon</p><p>moon</p>');
    const found = findQuote(document.body, [
      { type: 'TextQuoteSelector', exact: 'moon' },
      { type: 'TextPositionSelector', start: 7, end: 11 },
    ]);
    expect(found?.startContainer).toBe(document.querySelectorAll('p')[2]!.firstChild);
  });

  it('says when the quote is gone or selectors lead nowhere', () => {
    show('<p>nothing here</p>');
    expect(findQuote(document.body, [{ type: 'TextQuoteSelector', exact: 'moon' }])).toBeNull();
    expect(findQuote(document.body, [{ type: 'TextPositionSelector', start: 500, end: 510 }])).toBeNull();
    expect(findQuote(document.body, [])).toBeNull();
  });
});

it('counts code points as string iteration does', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary' }), fc.nat(30), (text, points) => {
      const all = [...text];
      expect(countPoints(text)).toBe(all.length);
      expect(text.slice(0, unitOfPoint(text, points))).toBe(all.slice(0, points).join(''));
      expect(lastPoints(text, points)).toBe(points === 0 ? '' : all.slice(-points).join(''));
    }),
  );
  expect(countPoints('\ud83c\ud83c\udf0a')).toBe(2);
});
