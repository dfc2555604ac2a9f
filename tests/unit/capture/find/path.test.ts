// @vitest-environment jsdom
import { describe, expect, it } from 'vitest';
import { elementAt, elementNear, pathSelector, rangeByPaths } from '#lib/capture/find/path.ts';
import { find, show } from '../select.ts';

const PAGE = `<main><h1>Tides</h1><section id="moon"><p>One</p><ul><li>a</li><li>b <em>c</em></li></ul><p>Two</p>
<math><mrow><mi>x</mi><mo>=</mo><mi>y</mi></mrow></math><svg><g><path/></g></svg></section>
<section id='a "b"'><p>Three</p></section><section id="twice"></section><section id="twice"><p>Four</p></section></main>`;

const pathOf = (element: Element): string => pathSelector(element, 0)!.value;

describe('paths', () => {
  it('lead to their element, as the page’s own XPath engine reads them', () => {
    show(PAGE);
    for (const element of document.querySelectorAll('*')) {
      const path = pathOf(element);
      expect(elementAt(document, path)).toBe(element);
      const first = XPathResult.FIRST_ORDERED_NODE_TYPE;
      const found = document.evaluate(path, document, null, first, null).singleNodeValue;
      expect(found, path).toBe(element);
    }
  });

  it('begin at the nearest id that is the element’s own and can be written', () => {
    show(PAGE);
    expect(pathOf(find('em'))).toBe('//*[@id="moon"]/ul[1]/li[2]/em[1]');
    expect(pathOf(find('mo'))).toBe('//*[@id="moon"]/*[4]/*[1]/*[2]');
    expect(pathOf(find('h1'))).toBe('/html[1]/body[1]/main[1]/h1[1]');
    expect(pathOf(find('section:nth-of-type(2) p'))).toBe('/html[1]/body[1]/main[1]/section[2]/p[1]');
    expect(pathOf(find('section:nth-of-type(4) p'))).toBe('/html[1]/body[1]/main[1]/section[4]/p[1]');
  });

  it.each([
    '//*[@id="sun"]/p[1]',
    '/html[1]/body[1]/article[1]',
    '/html[1]/body[1]/main[1]/section[9]',
    '/html/body/p[2]',
    '//p',
    'id("moon")',
    '//*[count(//*) > 0]',
    '/html[1]/body[1]/main[0]',
    '',
  ])('lead nowhere when they do not fit or were not written here: %s', (path) => {
    show(PAGE);
    expect(elementAt(document, path)).toBeNull();
  });

  it('lead near where their last steps no longer fit', () => {
    show(PAGE);
    const near = (path: string) => elementNear(document, path);
    expect(near('//*[@id="moon"]/ul[1]/li[7]/b[1]')).toEqual({ element: find('ul'), isWhole: false });
    expect(near('//*[@id="moon"]/ul[1]')).toEqual({ element: find('ul'), isWhole: true });
    expect(near('//*[@id="sun"]/p[1]')).toBeNull();
  });

  it('are left out where they would be too long to keep', () => {
    show('<div>'.repeat(500) + '<p>deep</p>');
    expect(pathSelector(find('p'), 0)).toBeNull();
  });
});

describe('rangeByPaths', () => {
  const cell = (path: string) => ({ type: 'XPathSelector' as const, value: path });

  // Source: W3C Web Annotation Data Model, Recommendation of 23 February 2017, 4.2.9 Range Selector: from the second
  // cell up to, but not including, the fourth (its example's path with the tbody that HTML puts in).
  it('ends before what its end names, as in the recommendation’s example', () => {
    show('<table><tr><td>1</td><td>2</td><td>3</td><td>4</td></tr></table>');
    const range = rangeByPaths(document, {
      type: 'RangeSelector',
      startSelector: cell('/html[1]/body[1]/table[1]/tbody[1]/tr[1]/td[2]'),
      endSelector: cell('/html[1]/body[1]/table[1]/tbody[1]/tr[1]/td[4]'),
    });
    expect(range?.toString()).toBe('23');
  });

  it('counts code points in the element that it names', () => {
    show('<p>\u{1f30a}\u{1d44e} tide <b>turns</b></p>');
    const at = (point: number) => ({
      ...cell('/html[1]/body[1]/p[1]'),
      refinedBy: { type: 'TextPositionSelector' as const, start: point, end: point },
    });
    const range = (from: number, to: number) =>
      rangeByPaths(document, { type: 'RangeSelector', startSelector: at(from), endSelector: at(to) });
    expect(range(1, 10)?.toString()).toBe('\u{1d44e} tide tu');
    expect(range(10, 1)).toBeNull();
    // The text of the element has become shorter: up to its end, for the quote to tell whether that is the passage.
    expect(range(3, 400)?.toString()).toBe('tide turns');
  });
});
