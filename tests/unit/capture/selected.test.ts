// @vitest-environment jsdom
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { boxInTop } from '#lib/capture/frames.ts';
import { readSelection } from '#lib/capture/read-selection.ts';
import { inPage, selectedIn } from '#lib/capture/selected.ts';
import { find, rangeOver, select, show } from './select.ts';

beforeEach(() => {
  document.getSelection()!.removeAllRanges();
});
afterEach(() => vi.restoreAllMocks());

function frameOf(html: string): { frame: HTMLIFrameElement; inner: Document } {
  show('<h1>Around</h1><p id="a">outside</p><iframe></iframe>');
  const frame = find('iframe') as HTMLIFrameElement;
  const inner = frame.contentDocument!;
  inner.body.innerHTML = html;
  return { frame, inner };
}

function selectIn(inner: Document, css: string): void {
  inner.getSelection()!.selectAllChildren(inner.querySelector(css)!);
}

describe('what is selected', () => {
  it('is that of the page, without ranges that hold nothing', () => {
    show('<p id="a">a</p>');
    select(rangeOver('#a'));
    expect(selectedIn(document)).toMatchObject({ doc: document, ranges: [expect.any(Range)] });
    document.getSelection()!.collapseToEnd();
    expect(selectedIn(document).ranges).toEqual([]);
  });

  it('is that of the frame which has the focus, even where the page has one as well', () => {
    const { frame, inner } = frameOf('<h1>Inside</h1><p>in the frame</p>');
    select(rangeOver('#a'));
    selectIn(inner, 'p');
    expect(selectedIn(document).ranges.map(String)).toEqual(['outside']);
    frame.focus();
    expect(selectedIn(document).doc).toBe(inner);
    const capture = readSelection(document);
    expect(capture.passage.text).toBe('in the frame');
    expect(capture.headings).toEqual(['Inside']);
    expect(capture.doc).toBe(inner);
    // A frame whose document its page has written has the page's address.
    expect(capture.page.url).toBe('http://localhost:3000/');
  });

  it('is that of the page where the frame in focus has none', () => {
    const { frame } = frameOf('<p>in the frame</p>');
    frame.focus();
    select(rangeOver('#a'));
    expect(document.activeElement).toBe(frame);
    expect(selectedIn(document).ranges.map(String)).toEqual(['outside']);
  });

  it('cannot be had from a frame of another site: its address is told', () => {
    const { frame } = frameOf('');
    frame.src = 'about:blank#elsewhere';
    vi.spyOn(frame, 'contentDocument', 'get').mockReturnValue(null);
    frame.focus();
    expect(() => selectedIn(document)).toThrow(
      expect.objectContaining({ message: 'errorSelectionInFrame', values: ['about:blank#elsewhere'] }),
    );
    select(rangeOver('#a'));
    expect(selectedIn(document).ranges.map(String)).toEqual(['outside']);
  });
});

describe('in the tree of an element of its own', () => {
  // jsdom has no getComposedRanges (Selection API); the browser test asks real ones.
  function selectInShadow(): { text: Text; host: Element } {
    show('<h1>Waves</h1><x-card></x-card><h2>After</h2>');
    const host = find('x-card');
    const shadow = host.attachShadow({ mode: 'open' });
    shadow.innerHTML = '<p>deep in a card, deep</p>';
    const text = shadow.querySelector('p')!.firstChild as Text;
    const selection = document.getSelection()!;
    const composed = { startContainer: text, startOffset: 0, endContainer: text, endOffset: 4 };
    Object.assign(selection, {
      getComposedRanges: ({ shadowRoots }: { shadowRoots: ShadowRoot[] }) =>
        shadowRoots.includes(shadow) ? [composed] : [],
    });
    return { text, host };
  }
  afterEach(() => Reflect.deleteProperty(document.getSelection()!, 'getComposedRanges'));

  it('the words are kept with the headings around the element, and told by a quote alone', () => {
    const { text, host } = selectInShadow();
    expect(inPage(text)).toBe(host);
    const { passage, headings, selectors } = readSelection(document);
    expect(passage.text).toBe('deep');
    expect(headings).toEqual(['Waves']);
    expect(selectors).toEqual([
      { type: 'TextQuoteSelector', exact: 'deep', prefix: '', suffix: ' in a card, deep' },
    ]);
  });
});

it('adds up the places of the frames around', () => {
  const { frame, inner } = frameOf('<p>a</p>');
  const at = (left: number, top: number) => new DOMRect(left, top, 100, 50);
  vi.spyOn(frame, 'getBoundingClientRect').mockReturnValue(at(10, 20));
  const range = inner.createRange();
  range.selectNodeContents(inner.body);
  range.getBoundingClientRect = () => at(1, 2);
  expect(boxInTop(range)).toEqual({ left: 11, top: 22, right: 111, bottom: 72 });
});
