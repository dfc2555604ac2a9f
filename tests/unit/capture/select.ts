/** Puts markup into the page's body. */
export function show(html: string): void {
  document.body.innerHTML = html;
}

/** The element that the selector finds; a test that names a missing one is wrong. */
export function find(selector: string): Element {
  const element = document.querySelector(selector);
  if (!element) throw new Error(`no ${selector}`);
  return element;
}

/** A range over everything in the element. */
export function rangeOver(selector: string): Range {
  const range = document.createRange();
  range.selectNodeContents(find(selector));
  return range;
}

/**
 * A range over the markup between the marks "[" and "]" in the body's text, which are taken out. A mark stands where
 * a student would press and release.
 */
export function marked(html: string): Range {
  show(html);
  const [from, to] = [takeMark('['), takeMark(']')];
  const range = document.createRange();
  range.setStart(...from);
  range.setEnd(...to);
  return range;
}

function takeMark(mark: string): [Text, number] {
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode() as Text | null; node; node = walker.nextNode() as Text | null) {
    const at = node.data.indexOf(mark);
    if (at < 0) continue;
    node.deleteData(at, 1);
    return [node, at];
  }
  throw new Error(`no ${mark}`);
}

/** Selects a range as the student's mouse would. */
export function select(range: Range): void {
  const selection = document.getSelection()!;
  selection.removeAllRanges();
  selection.addRange(range);
}

/** The markup's nodes, in a document without a view. */
export function fragmentOf(html: string): DocumentFragment {
  const inert = document.implementation.createHTMLDocument('');
  const template = inert.createElement('template');
  template.innerHTML = html;
  return template.content;
}
