import { isElement } from '../dom.ts';
import { TEX_IMAGE } from './image-tex.ts';

/** What typesetters leave in a page for one formula, outermost elements included. */
export const FORMULA = [
  'math',
  '.katex-display',
  '.katex',
  'mjx-container',
  '.MathJax_Display',
  '.MJXc-display',
  '.MathJax_SVG_Display',
  '.MathJax',
  '.MathJax_CHTML',
  '.MathJax_SVG',
  '.MathJax_MathML',
  '.mwe-math-element',
  TEX_IMAGE,
].join(', ');

/** A TeX source left in the page, such as MathJax 2 keeps behind each formula. */
export const TEX_SCRIPT = 'script[type^="math/tex"]';

/** The outermost element of the formula that the node is in; null when it is in none. */
export function formulaAround(node: Node): Element | null {
  let found: Element | null = null;
  let element = isElement(node) ? node : node.parentElement;
  for (; element; element = element.parentElement) if (element.matches(FORMULA)) found = element;
  return found;
}

/** The TeX source that stands right behind a formula; null when none does. */
export function scriptBehind(formula: Element): Element | null {
  const next = formula.nextElementSibling;
  return next?.matches(TEX_SCRIPT) ? next : null;
}

/** Moves the ends of the range so that no formula is cut. */
export function takeWholeFormulas(range: Range): void {
  const first = formulaAround(range.startContainer);
  if (first) range.setStartBefore(first);
  const last = formulaAround(range.endContainer) ?? lastBefore(range);
  if (last) range.setEndAfter(scriptBehind(last) ?? last);
}

/** The formula that ends exactly where the range ends. */
function lastBefore({ endContainer, endOffset }: Range): Element | null {
  const before = isElement(endContainer) ? endContainer.childNodes[endOffset - 1] : null;
  return isElement(before) && before.matches(FORMULA) ? before : null;
}
