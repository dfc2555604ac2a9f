// @vitest-environment jsdom
import { beforeEach, describe, expect, it } from 'vitest';
import { clearRanges, paintRanges } from '#lib/capture/find/highlight.ts';
import { rangeOver, show } from '../select.ts';

/** A window with the parts of CSSOM that jsdom lacks. */
function viewWithHighlights() {
  class Sheet {
    text = '';
    replaceSync(text: string) {
      this.text = text;
    }
  }
  const doc = { adoptedStyleSheets: [new Sheet()] };
  const view = {
    document: doc,
    CSS: { highlights: new Map<string, Set<Range>>() },
    Highlight: Set,
    CSSStyleSheet: Sheet,
  };
  return { view: view as unknown as Window, doc, highlights: view.CSS.highlights };
}

describe('paintRanges', () => {
  beforeEach(() => show('<p id="a">one</p><p id="b">two</p>'));

  it('paints what it is given in place of what it painted before, with one sheet', () => {
    const { view, doc, highlights } = viewWithHighlights();
    const [a, b] = [rangeOver('#a'), rangeOver('#b')];
    const markup = document.body.innerHTML;
    expect(paintRanges(view, 'clips', [a, b])).toBe(true);
    expect([...highlights.get('clips')!]).toEqual([a, b]);
    expect(paintRanges(view, 'clips', [b], 'color: Highlight')).toBe(true);
    expect([...highlights.get('clips')!]).toEqual([b]);
    expect(doc.adoptedStyleSheets.map(({ text }) => text)).toEqual([
      '',
      '::highlight(clips) { color: Highlight }',
    ]);
    expect(document.body.innerHTML).toBe(markup);
  });

  it('takes its own away again, and leaves the page’s', () => {
    const { view, doc, highlights } = viewWithHighlights();
    paintRanges(view, 'clips', [rangeOver('#a')]);
    paintRanges(view, 'opened', [rangeOver('#b')]);
    clearRanges(view, 'clips');
    clearRanges(view, 'never');
    expect([...highlights.keys()]).toEqual(['opened']);
    expect(doc.adoptedStyleSheets).toHaveLength(2);
  });

  it('paints nothing and says so where the browser cannot', () => {
    expect(paintRanges(window, 'clips', [rangeOver('#a')])).toBe(false);
    expect(() => clearRanges(window, 'clips')).not.toThrow();
  });
});
