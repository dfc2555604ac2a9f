import type { MathNode } from './math-tree.ts';

/** Words whose limits may stand below them, beside the large signs. */
const LIMIT_WORDS = /^(lim|max|min|sup|inf|lim ?sup|lim ?inf|det|gcd|Pr|arg ?max|arg ?min)$/;

/** Sums, products, integrals, unions and the like: what stands above and below is a limit of it. */
const LARGE_SIGN = /^[\u220f-\u2211\u222b-\u2233\u22c0-\u22c3\u2a00-\u2a1c]$/;

export function isLargeOperator(node: MathNode): boolean {
  return node.name === 'mo' ? LARGE_SIGN.test(node.text) : node.name === 'mi' && LIMIT_WORDS.test(node.text);
}

/** The forms of an accent by the one that stands for all, narrow or wide, of its own or borrowed from another sign. */
export const ACCENTS: Readonly<Record<string, string>> = {
  '^': '\u02c6',
  '\u0302': '\u02c6',
  '~': '\u02dc',
  '\u0303': '\u02dc',
  '\u223c': '\u02dc',
  '\u203e': '\u00af',
  '\u02c9': '\u00af',
  '\u0304': '\u00af',
  '\u0305': '\u00af',
  '\u2015': '\u00af',
  '\u2013': '\u00af',
  '\u2212': '\u00af',
  _: '\u00af',
  '\u20d7': '\u2192',
  '.': '\u02d9',
  '\u0307': '\u02d9',
  '\u22c5': '\u02d9',
  '\u0308': '\u00a8',
  '\u20db': '\u2026',
  '\u0301': '\u00b4',
  '\u02ca': '\u00b4',
  '\u0300': '`',
  '\u02cb': '`',
  '\u030c': '\u02c7',
  '\u0306': '\u02d8',
};

/** Lines that <menclose> draws, by the element that an accent would stand in. */
export const BARS: Readonly<Record<string, string>> = { top: 'mover', bottom: 'munder' };
