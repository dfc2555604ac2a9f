import { isBlank, isElement } from '../dom.ts';

/** Pictures that may be of a formula: all that have its TeX, and many that have not. */
export const TEX_IMAGE = [
  ...['data-tex', 'data-latex', 'data-equation-content'].map((name) => `img[${name}]`),
  ...['\\\\', '^', '_', '$', 'tex:'].map((sign) => `img[alt*="${sign}" i]`),
  ...['tex', 'math', 'equation', 'formula'].map((word) => `img[class*="${word}" i]`),
].join(', ');

const DELIMITED = /^(?:\$\$([^]+)\$\$|\\\[([^]+)\\\]|\$([^$]+)\$|\\\(([^]+)\\\))$/;

/** Commands whose argument is words. */
const WORDS_IN_TEX =
  /\\(text\w*|math(rm|it|sf|bf|tt)|operatorname\*?|mbox|hbox|begin|end|label|tag)\s*\{[^{}]*\}|\\[a-z]+/gi;

/** Names that stand in formulas without a backslash, too. */
const NAMES = /^(sin|cos|tan|cot|sec|csc|log|exp|lim|max|min|mod|sup|inf|det|arg|const|sinh|cosh|tanh|erf)$/;

const LITTLE = /^(of|is|to|in|as|at|by|an|or|on|if|we|it|no|the)$/i;

/** TeX that a picture of a formula has as its alternative text or beside it. Null for any other picture. */
export function texOfImage(image: Element): { tex: string; block: boolean } | null {
  const given = ['data-tex', 'data-latex', 'data-equation-content'].map((name) =>
    image.getAttribute(name)?.trim(),
  );
  const noted = given.find((text) => !!text);
  const alt = (image.getAttribute('alt')?.trim() || image.getAttribute('title')?.trim()) ?? '';
  const text = (noted ?? alt).replace(/^(la)?tex:\s*/i, '');
  const [, ...inner] = DELIMITED.exec(text) ?? [];
  const tex = (inner.find((part) => part !== undefined) ?? text).trim();
  const hint =
    text !== alt ||
    inner.length > 0 ||
    /(^|[\s_-])((la)?tex|math|eqn?|equation|formula)/i.test(image.className);
  if (tex === '' || !(noted || isTex(tex, hint))) return null;
  const display = inner[0] !== undefined || inner[1] !== undefined;
  return { tex, block: display || isBlock(image) };
}

/**
 * Whether text is TeX and not words.
 *
 * @param hinted whether the page says that there is a formula, by delimiters or by a class
 */
export function isTex(text: string, hinted: boolean): boolean {
  const words = text.replace(WORDS_IN_TEX, ' ').match(/[a-z\u00c0-\u024f'\u2019]{2,}/gi) ?? [];
  const prose = words.filter((word) => LITTLE.test(word) || (word.length > 2 && !NAMES.test(word))).length;
  const path = /^([a-z]:)?\\\w|[\w-]\.[a-z]{3,4}$|^\w*\\\w+\\/i.test(text) && !/[{}^]/.test(text);
  if (prose > (hinted ? 1 : 0)) return false;
  if (hinted) return words.length === 0 || prose === 0 || /[\\^_={}]/.test(text);
  if (/\\[a-z]{2,}|\\[,;!{}|]/i.test(text)) return !path;
  // A power of one letter, number or bracket, or an index of one letter; of more than that only in an equation.
  const related = /[=<>+*/\u2212\u00d7\u2264\u2265\u2248]|\s-\s/.test(text);
  if (/(^|[^a-z])([a-z]|\d+)\^[\w{(+-]|[)\]}]\^[\w{(+-]/i.test(text)) return true;
  return related && /(^|[^a-z\d])[a-z]{1,3}(\^|_(\{|[a-z\d](?![a-z\d])))/i.test(text);
}

function isBlock(image: Element): boolean {
  const style = image.getAttribute('style') ?? '';
  if (/display|block/i.test(image.className) || /display:\s*block/i.test(style)) return true;
  if (/inline/i.test(image.className)) return false;
  const parent = image.parentElement;
  return (
    !!parent?.matches('p, div, dd, center, figure') &&
    [...parent.childNodes].every(
      (node) => node === image || (!isElement(node) ? isBlank(node) : node.localName === 'br'),
    )
  );
}
