/* eslint-disable no-restricted-properties -- the one place where markup is parsed: into a document without a view, and
   nothing of it is shown before it is cleaned */

/**
 * The markup's nodes in an element of their own, uncleaned. Null where the page forbids parsing strings (Trusted
 * Types).
 *
 * @param inert a document without a view, in which no picture loads and no handler runs
 */
export function parseMarkup(markup: string, inert: Document): HTMLElement | null {
  const root = inert.createElement('span');
  try {
    root.innerHTML = markup;
    return root;
  } catch {
    return null;
  }
}

/** The markup of everything in the element. */
export function markupOf(root: Element): string {
  return root.innerHTML;
}
