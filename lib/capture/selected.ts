import { StudentError } from '#lib/model/student-error.ts';

/** What is selected, and the document that it is selected in: the page's own, or that of a frame in it. */
export interface Selected {
  doc: Document;
  /** In document order as the browser gives them; none of them is empty. */
  ranges: Range[];
}

/**
 * What the student has selected: in the page, in the frame that has the focus, or within an element that keeps a tree
 * of its own (open shadow roots).
 *
 * @throws StudentError `errorSelectionInFrame` when nothing is selected but, perhaps, in a frame of another site; its value is the frame's address
 */
export function selectedIn(doc: Document): Selected {
  const frame = doc.activeElement;
  const isFrame = frame?.localName === 'iframe' || frame?.localName === 'frame';
  const inner = isFrame ? (frame as HTMLIFrameElement).contentDocument : null;
  const within = inner && selectedIn(inner);
  if (within?.ranges.length) return within;
  const selection = doc.getSelection();
  const ranges = Array.from({ length: selection?.rangeCount ?? 0 }, (_, index) =>
    selection!.getRangeAt(index),
  ).filter(({ collapsed }) => !collapsed);
  if (ranges.length === 0 && selection) ranges.push(...rangesInShadow(doc, selection));
  if (ranges.length === 0 && isFrame && !inner) {
    throw new StudentError('errorSelectionInFrame', (frame as HTMLIFrameElement).src);
  }
  return { doc, ranges };
}

/** The page shows its scripts an empty selection at the element; who names the roots is told of what is in them. */
function rangesInShadow(doc: Document, selection: Selection): Range[] {
  const shadowRoots = shadowRootsIn(doc);
  const composed = shadowRoots.length > 0 ? selection.getComposedRanges?.({ shadowRoots }) : null;
  return (composed ?? []).flatMap(({ startContainer, startOffset, endContainer, endOffset }) => {
    const range = doc.createRange();
    range.setStart(startContainer, startOffset);
    range.setEnd(endContainer, endOffset);
    return range.collapsed ? [] : range;
  });
}

function shadowRootsIn(root: Document | ShadowRoot): ShadowRoot[] {
  return [...root.querySelectorAll('*')].flatMap(({ shadowRoot }) =>
    shadowRoot ? [shadowRoot, ...shadowRootsIn(shadowRoot)] : [],
  );
}

/** The node of the page itself in which a node stands that is in the tree of an element's own. */
export function inPage(node: Node): Node {
  const { host } = node.getRootNode() as Partial<ShadowRoot>;
  return host ? inPage(host) : node;
}
