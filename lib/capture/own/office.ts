import { isElement, rename, unwrap } from '../dom.ts';
import { parseMarkup } from '../markup.ts';
import { ommlToMathml } from './omml.ts';

/** A node of type comment: what word processors hide from browsers, and what they show to browsers only, is between such. */
const SHOW_COMMENT = 128;

/** Equations, hidden in a comment: `<!--[if gte msEquation 12]>…<![endif]-->`. */
const EQUATION = /^\[if [^\]]*msEquation[^\]]*\]>([\s\S]*?)<!\[endif\]$/i;

/**
 * Brings what office programs put on the clipboard into plain HTML, while what it meant can still be read: equations
 * become MathML, marked paragraphs lists, styled spans emphasis. From memory of the programs' output, not from a
 * specification.
 */
export function readOffice(root: Element): void {
  readEquations(root);
  readLists(root);
  readEmphasis(root);
}

function readEquations(root: Element): void {
  const comments: Comment[] = [];
  const walker = root.ownerDocument.createTreeWalker(root, SHOW_COMMENT);
  for (let node = walker.nextNode(); node; node = walker.nextNode()) comments.push(node as Comment);
  for (const comment of comments) {
    const hidden = EQUATION.exec(comment.data)?.[1];
    if (hidden === undefined || !comment.parentNode) continue;
    // HTML knows no empty elements with a slash at their end.
    const markup = hidden.replace(/<(m:\w+)([^<>]*)\/>/g, '<$1$2></$1>');
    const equations = parseMarkup(markup, root.ownerDocument)?.querySelectorAll('m\\:omath') ?? [];
    const formulas = [...equations].map(ommlToMathml).filter(({ textContent }) => textContent.trim() !== '');
    if (formulas.length === 0) continue;
    dropFallback(comment);
    comment.replaceWith(...formulas);
  }
}

/** The picture of the equation that browsers would show, between `<![if !msEquation]>` and `<![endif]>`. */
function dropFallback(equation: Comment): void {
  const first = equation.nextSibling;
  if (first?.nodeName !== '#comment' || !/^\[if !msEquation\]/i.test((first as Comment).data)) return;
  for (let node: ChildNode | null = first; node;) {
    const next: ChildNode | null = node.nextSibling;
    const isEnd = node.nodeName === '#comment' && /^\[endif\]/i.test((node as Comment).data);
    node.remove();
    if (isEnd) return;
    node = next;
  }
}

/** Which list a paragraph is of, and how deep in it. */
const LIST = /mso-list:\s*(\w+)[^;"]*\blevel(\d)/i;

/** Paragraphs that are set as list items, the marker written into them, as lists. */
function readLists(root: Element): void {
  let open: Element[] = [];
  let last = '';
  for (const paragraph of [...root.querySelectorAll('p[style*="mso-list"]')]) {
    const marker = paragraph.querySelector('[style*="mso-list:Ignore" i], [style*="mso-list: Ignore" i]');
    const [, id = '', level] = LIST.exec(paragraph.getAttribute('style') ?? '') ?? [];
    if (level === undefined || !marker) continue;
    const isNumbered = /^\(?[\da-z]{1,4}[.)]/i.test(marker.textContent.trim());
    marker.remove();
    if (!open[0] || id !== last || previousOf(paragraph) !== open[0]) open = [];
    last = id;
    openLists(paragraph, open, Number(level), isNumbered ? 'ol' : 'ul');
    open.at(-1)!.append(rename(paragraph, 'li'));
  }
}

/** Opens and closes lists until as many are open as the item is deep. */
function openLists(paragraph: Element, open: Element[], level: number, name: string): void {
  open.length = Math.min(open.length, level);
  while (open.length < level) {
    const list = paragraph.ownerDocument.createElement(name);
    const host = open.at(-1);
    if (host) (host.lastElementChild ?? host).append(list);
    else paragraph.before(list);
    open.push(list);
  }
}

/** The element before, if nothing but white space and comments is between. */
function previousOf(element: Element): Element | null {
  let node = element.previousSibling;
  while (node && !isElement(node) && (node.nodeName === '#comment' || !node.textContent?.trim()))
    node = node.previousSibling;
  return isElement(node) ? node : null;
}

/** What styles say in words: bold, italic, raised and lowered. */
function readEmphasis(root: Element): void {
  for (const element of root.querySelectorAll('b[style], i[style]')) {
    const style = element.getAttribute('style') ?? '';
    // Some programs wrap all that is copied in an element that means nothing.
    if (/font-(weight|style)\s*:\s*normal/i.test(style)) unwrap(element);
  }
  for (const span of root.querySelectorAll('span[style]')) {
    const style = span.getAttribute('style') ?? '';
    const name = /vertical-align\s*:\s*super/i.test(style)
      ? 'sup'
      : /vertical-align\s*:\s*sub/i.test(style)
        ? 'sub'
        : /font-weight\s*:\s*(bold|[6-9]00)/i.test(style)
          ? 'strong'
          : /font-style\s*:\s*italic/i.test(style)
            ? 'em'
            : null;
    if (name && span.textContent.trim() !== '') rename(span, name);
  }
}
