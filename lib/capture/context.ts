import { HTML, carry, isElement } from './dom.ts';
import { shellOf } from './copy-range.ts';
import { wrapLoose } from './tidy.ts';

/** Inline elements whose meaning reaches into a selection made inside them. */
const EMPHASIS: ReadonlySet<string> = new Set(
  'em strong b i u s mark small sub sup code kbd samp var abbr q cite dfn del ins strike tt'.split(' '),
);

/** Inline elements that say nothing themselves but may stand between a selection and its emphasis. */
const NEUTRAL = /^(span|a|label|font|bdi|bdo|time|.+-.+)$/;

const LIST: ReadonlySet<string> = new Set(['ul', 'ol', 'menu', 'dl']);
const TABLE_PART: ReadonlySet<string> = new Set(['tr', 'thead', 'tbody', 'tfoot', 'table']);

/** The wrappers made so far, by the element of the page each stands for. */
export type Wrappers = Map<Element, Element>;

/**
 * Puts copied content into what it needs around it: items into their list, cells into row and table, code into its
 * <pre>, words into the emphasis they stand in.
 *
 * @param wrappers lists and tables of the ranges copied before: more of the same is added to them, and an empty
 *   fragment comes back
 */
export function wrapInContext(content: DocumentFragment, range: Range, wrappers: Wrappers): DocumentFragment {
  const top = elementOf(range.commonAncestorContainer);
  let inPre = false;
  for (const element of neededAround(top)) {
    const made = wrappers.get(element);
    if (made) {
      made.append(content);
      return content;
    }
    const shell = shellOf(element, content.ownerDocument, range);
    shell.append(content);
    content.append(shell);
    inPre ||= element.localName === 'pre';
    if (LIST.has(element.localName) || TABLE_PART.has(element.localName)) wrappers.set(element, shell);
  }
  const pre = inPre ? null : top?.closest('pre');
  if (pre) {
    const shell = shellOf(pre, content.ownerDocument, range);
    shell.append(content);
    content.append(shell);
  }
  return content;
}

/** From the inside out. */
function neededAround(top: Element | null): Element[] {
  const needed: Element[] = [];
  let element = top;
  if (element && isHtml(element) && LIST.has(element.localName)) return [element];
  if (element && isHtml(element) && TABLE_PART.has(element.localName)) {
    for (; element && TABLE_PART.has(element.localName); element = element.parentElement)
      needed.push(element);
    return needed;
  }
  for (; element && isHtml(element); element = element.parentElement) {
    if (EMPHASIS.has(element.localName) || element.localName === 'pre') needed.push(element);
    else if (!NEUTRAL.test(element.localName)) break;
  }
  return needed;
}

/** Notes the language and the direction that the range stands in on everything that has none of its own. */
export function carryLanguage(content: DocumentFragment, range: Range): void {
  const top = elementOf(range.commonAncestorContainer);
  const lang = top?.closest('[lang]');
  const dir = top?.closest('[dir]');
  const rightToLeft = dir?.getAttribute('dir')?.toLowerCase() === 'rtl';
  if (!lang && !rightToLeft) return;
  wrapLoose(content, 'span');
  for (const element of content.children) {
    if (lang && !element.hasAttribute('lang')) carry(lang, element, ['lang']);
    if (rightToLeft && !element.hasAttribute('dir')) element.setAttribute('dir', 'rtl');
  }
}

function elementOf(node: Node): Element | null {
  return isElement(node) ? node : node.parentElement;
}

function isHtml(element: Element): boolean {
  return element.namespaceURI === HTML;
}
