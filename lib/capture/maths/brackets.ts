import type { MathNode } from './math-tree.ts';

const OPENING = '([{\u27e8\u230a\u2308';
const CLOSING = ')]}\u27e9\u230b\u2309';
const STRAIGHT = '|\u2016\u2223\u2225';

const signOf = (node: MathNode): string => (node.name === 'mo' ? node.text.trim() : '');
const isIn = (signs: string, sign: string): boolean => sign !== '' && signs.includes(sign);

/** Whether a row begins with a bracket that its last sign closes: not "(a)(b)", nor three bars. */
export function isBracketed({ name, children }: MathNode): boolean {
  return name === 'mrow' && isPair(children);
}

/** The same for the parts of a row. An empty sign at either end counts as a bracket that is not shown. */
// eslint-disable-next-line complexity -- one case after another, each a kind of element or sign
export function isPair(parts: readonly MathNode[]): boolean {
  const signs = parts.map(signOf);
  const first = signs[0] ?? '';
  const last = signs.at(-1) ?? '';
  if (parts.length < 2 || parts[0]!.name !== 'mo' || parts.at(-1)!.name !== 'mo') return false;
  const inside = signs.slice(1, -1);
  if (isIn(STRAIGHT, first) && isIn(STRAIGHT, last)) return !inside.some((sign) => isIn(STRAIGHT, sign));
  if (first !== '' && !isIn(OPENING + CLOSING + STRAIGHT, first)) return false;
  if (last !== '' && !isIn(OPENING + CLOSING + STRAIGHT, last)) return false;
  let depth = 0;
  for (const sign of inside) {
    if (isIn(OPENING, sign)) depth++;
    if (isIn(CLOSING, sign)) depth--;
    // Half-open intervals such as ]a, b[ have their brackets the wrong way round, but only at the ends.
    if (depth < 0) return false;
  }
  return depth === 0;
}
