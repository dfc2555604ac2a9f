import { type MathNode, mathNode } from './math-tree.ts';

const UNSEEN: ReadonlySet<string> = new Set([
  'annotation',
  'annotation-xml',
  'none',
  'maligngroup',
  'malignmark',
]);

/** Elements that a row of one part needs not. */
const WRAPPERS: ReadonlySet<string> = new Set(['mrow', 'mstyle', 'mpadded', 'math']);

/**
 * The tree without what only carries others: annotations, <semantics>, <maction>, rows of one part; <mfenced> written
 * out, scripts on nothing kept in their place.
 */
export function simplify(node: MathNode): MathNode {
  if (node.name === 'semantics' || node.name === 'maction') {
    const [first] = node.children;
    return first ? simplify(first) : mathNode('mrow');
  }
  // Places count in the parts of a fraction or script, so what is not seen there becomes an empty row.
  const children = node.children
    .map((child) =>
      UNSEEN.has(child.name) ? mathNode(child.name === 'none' ? 'mrow' : 'unseen') : simplify(child),
    )
    .filter((child) => child.name !== 'unseen');
  const [only] = children;
  const carries = WRAPPERS.has(node.name) && !isBoxed(node) && node.attributes['mathvariant'] === undefined;
  if (carries && only && children.length === 1) return only;
  return node.name === 'mfenced' ? withFences(node, children) : { ...node, children };
}

/** A border is how one library draws a box. */
export function isBoxed({ attributes }: MathNode): boolean {
  return /\bborder:/.test(attributes['style'] ?? '');
}

function withFences({ attributes }: MathNode, children: readonly MathNode[]): MathNode {
  const { open = '(', close = ')', separators = ',' } = attributes;
  const signs = [...separators.replace(/\s+/g, '')];
  const sign = (text: string): MathNode => mathNode('mo', {}, [], text);
  const inside = children.flatMap((child, index) => {
    const between = index > 0 ? (signs[Math.min(index, signs.length) - 1] ?? '') : '';
    return between ? [sign(between), child] : [child];
  });
  return mathNode('mrow', {}, [sign(open), ...inside, sign(close)]);
}
