/** Walks what a range holds, child by child, without touching the page. */
export interface RangeEnds {
  /** The first child that the range touches. */
  first(parent: Node): Node | null;
  /** The child before which it ends; null when it goes on to the last. */
  stop(parent: Node): Node | null;
  /** The part of a text node that lies in the range. */
  slice(text: Text): string;
}

export function endsOf(range: Range): RangeEnds {
  const { startContainer, startOffset, endContainer, endOffset, commonAncestorContainer: top } = range;
  const starts = pathTo(startContainer, top);
  const stops = pathTo(endContainer, top);
  return {
    first(parent) {
      if (parent === startContainer) return parent.childNodes[startOffset] ?? null;
      return starts.get(parent) ?? parent.firstChild;
    },
    stop(parent) {
      if (parent === endContainer) return parent.childNodes[endOffset] ?? null;
      return stops.get(parent)?.nextSibling ?? null;
    },
    slice(text) {
      const from = text === startContainer ? startOffset : 0;
      return text.data.slice(from, text === endContainer ? endOffset : text.length);
    },
  };
}

/** Calls back for each child of `parent` that lies in the range at least in part. */
export function forEachChild(parent: Node, ends: RangeEnds, visit: (node: Node) => void): void {
  // Where the range ends before the parent's first child, nothing of the parent lies in it.
  const stop = ends.stop(parent);
  for (let node = ends.first(parent); node && node !== stop; node = node.nextSibling) visit(node);
}

/** For each ancestor of `node` up to `top`, the child that leads to it. */
function pathTo(node: Node, top: Node): Map<Node, Node> {
  const path = new Map<Node, Node>();
  for (let child = node; child !== top && child.parentNode; child = child.parentNode) {
    path.set(child.parentNode, child);
  }
  return path;
}

/** The child at which the range begins, if it begins within the element; else null. */
export function startChild({ startContainer, startOffset }: Range, element: Element): Node | null {
  if (startContainer === element) return element.childNodes[startOffset] ?? null;
  let node: Node | null = startContainer;
  while (node && node.parentNode !== element) node = node.parentNode;
  return node;
}
