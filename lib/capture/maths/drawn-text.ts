import { isElement, isText } from '../dom.ts';

/** The characters drawn. MathJax may draw one by class name or outline alone, with the code point noted beside. */
export function drawnText(node: Node): string {
  if (!isElement(node)) return isText(node) ? node.data : '';
  const code =
    node.getAttribute('data-c') ?? /\bmjx-c([\dA-F]+)\b/.exec(node.getAttribute('class') ?? '')?.[1];
  return code ? String.fromCodePoint(parseInt(code, 16)) : [...node.childNodes].map(drawnText).join('');
}
