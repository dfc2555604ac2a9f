import { isPair } from './brackets.ts';
import { type MathNode, parseMath } from './math-tree.ts';
import { ACCENTS, isLargeOperator } from './operators.ts';
import { isBoxed, simplify } from './simplify.ts';
import { arrayAsTex, isTable } from './tex-tables.ts';
import { OVER, UNDER } from './tex-signs.ts';
import { joinTex, spaceAsTex, tokenAsTex } from './tex-tokens.ts';

/**
 * TeX for a formula of which only the MathML is known; null where the markup is none or nothing of it would be seen.
 * Read back by `texToMathml` it gives the same normal form (./normalise-mathml.ts). Colour and sizes are not written.
 */
export function mathmlToTex(mathml: string): string | null {
  const math = parseMath(mathml);
  return (math && write(simplify(math)).trim()) || null;
}

type Writer = (node: MathNode, before?: MathNode, after?: MathNode) => string;

const part = (node: MathNode, index: number): string => {
  const child = node.children[index];
  return child ? write(child).trim() : '';
};
const inBraces = (node: MathNode): string => `{${writeRow(node.children).trim()}}`;
const below = (node: MathNode): string => `_{${part(node, 1)}}`;
const token: Writer = (node, before, after) => tokenAsTex(node, before, after);

const WRITERS: Readonly<Record<string, Writer>> = {
  mi: token,
  mn: token,
  mo: token,
  ms: token,
  mtext: token,
  mspace: (node, before) =>
    before?.name === 'mo' && before.text.trim() === '\u2061' ? '' : spaceAsTex(node.attributes['width']),
  mfrac: (node) => {
    const bare = /^0+(\.0*)?([a-z]+|%)?$/.test(node.attributes['linethickness']?.trim() ?? '');
    return `${bare ? '\\genfrac{}{}{0pt}{}' : '\\frac'}{${part(node, 0)}}{${part(node, 1)}}`;
  },
  msqrt: (node) => `\\sqrt${inBraces(node)}`,
  mroot: (node) => `\\sqrt[{${part(node, 1)}}]{${part(node, 0)}}`,
  msub: (node) => base(node) + below(node),
  msup: (node) => base(node) + raised(part(node, 1)),
  msubsup: (node) => base(node) + below(node) + raised(part(node, 2)),
  munder: limits,
  mover: limits,
  munderover: limits,
  mmultiscripts: multiscripts,
  mtable: (node) => arrayAsTex(node, null, (cell) => writeRow(cell.children)),
  mphantom: (node) => `\\phantom${inBraces(node)}`,
  menclose: (node) => enclosure(node.attributes['notation'] ?? '') + inBraces(node),
};

function write(node: MathNode, before?: MathNode, after?: MathNode): string {
  const writer = Object.hasOwn(WRITERS, node.name) ? WRITERS[node.name] : undefined;
  if (writer) return writer(node, before, after);
  return isBoxed(node) ? `\\boxed${inBraces(node)}` : writeRow(node.children);
}

function writeRow(nodes: readonly MathNode[]): string {
  const fenced = nodes.length === 3 && binomialAt(nodes, 0) ? null : betweenFences(nodes);
  if (fenced !== null) return fenced;
  const pieces: string[] = [];
  for (let index = 0; index < nodes.length; index++) {
    const binomial = binomialAt(nodes, index);
    pieces.push(binomial ?? write(nodes[index]!, nodes[index - 1], nodes[index + 1]));
    if (binomial !== null) index += 2;
  }
  return joinTex(pieces).replace(/ {2,}/g, ' ');
}

function binomialAt(nodes: readonly MathNode[], index: number): string | null {
  const [open, fraction, close] = nodes.slice(index, index + 3);
  if (open?.text.trim() !== '(' || close?.text.trim() !== ')' || fraction?.name !== 'mfrac') return null;
  const tex = write(fraction);
  return tex.startsWith('\\frac') ? null : `\\binom{${part(fraction, 0)}}{${part(fraction, 1)}}`;
}

const OPENING = /^[([{\u27e8\u230a\u2308|\u2016\u2225\u2223]?$/;
const CLOSING = /^[)\]}\u27e9\u230b\u2309|\u2016\u2225\u2223]?$/;
const TALL = /^(mfrac|mtable|munder|mover|munderover|mroot|msqrt)$/;

const isTall = (node: MathNode): boolean => TALL.test(node.name) || node.children.some(isTall);
const isFence = (node: MathNode | undefined, signs: RegExp): node is MathNode =>
  node?.name === 'mo' && node.attributes['stretchy'] !== 'false' && signs.test(node.text.trim());

/** A row in brackets that grow with it; null where the row is no such one. */
function betweenFences(nodes: readonly MathNode[]): string | null {
  const [first] = nodes;
  const last = nodes.at(-1);
  if (!first || nodes.length < 2 || !isFence(first, OPENING)) return null;
  const closed = isFence(last, CLOSING);
  const inside = nodes.slice(1, closed ? -1 : undefined);
  const signs: [string, string] = [first.text.trim(), closed ? last.text.trim() : ''];
  const [only] = inside;
  if (only && inside.length === 1 && isTable(only))
    return arrayAsTex(only, signs, (cell) => writeRow(cell.children));
  if (!closed || !inside.some(isTall) || !isPair(nodes)) return null;
  const [open, close] = [first, last].map((fence) => (fence.text.trim() === '' ? '.' : write(fence).trim()));
  return `\\left${open} ${writeRow(inside).trim()} \\right${close}`;
}

/** What scripts stand on, in braces unless it is one thing for TeX as well. */
function base(node: MathNode): string {
  const tex = part(node, 0);
  const core = node.children[0];
  const single = /^(\\[a-z]+|\\[^a-z]|[^\\{}])$/i.test(tex) || /^\\[a-z]+\{[^{}]*\}$/i.test(tex);
  return single || (core?.name === 'mrow' && isPair(core.children)) ? tex : `{${tex}}`;
}

function raised(tex: string): string {
  return /^'+$/.test(tex) ? tex : `^{${tex}}`;
}

// eslint-disable-next-line complexity -- one case after another, each a kind of element or sign
function limits(node: MathNode): string {
  const [core, ...marks] = node.children;
  if (!core) return '';
  const under = node.name === 'mover' ? undefined : marks[0];
  const over = node.name === 'munder' ? undefined : marks.at(-1);
  const [lower, upper] = [under, over].map((mark) => mark && withoutSpace(write(mark)));
  if (isLargeOperator(core)) {
    return base(node) + (lower ? `_{${lower}}` : '') + (upper ? `^{${upper}}` : '');
  }
  const inside = part(node, 0);
  const arrow = ({ '\u2192': '\\xrightarrow', '\u2190': '\\xleftarrow' } as Record<string, string>)[
    core.text.trim()
  ];
  if (arrow && core.name === 'mo') return `${arrow}${lower ? `[{${lower}}]` : ''}{${upper ?? ''}}`;
  const single = [...core.text.trim()].length === 1 && core.children.length === 0;
  const topped = over ? overmark(over, inside, upper ?? '', single) : inside;
  return under ? undermark(under, topped, lower ?? '') : topped;
}

/** Space at the ends of a mark is the typesetter's. */
function withoutSpace(tex: string): string {
  return tex.trim().replace(/^(\\(q?quad|[,:; !])\s*)+|(\s*\\(q?quad|[,:; !]))+$/g, '');
}

function overmark(mark: MathNode, inside: string, tex: string, single: boolean): string {
  const accents = mark.name === 'mo' ? OVER[ACCENTS[mark.text.trim()] ?? mark.text.trim()] : undefined;
  if (accents) return `${accents[single ? 0 : 1]}{${inside}}`;
  return tex === '' ? inside : `\\overset{${tex}}{${inside}}`;
}

function undermark(mark: MathNode, inside: string, tex: string): string {
  const command = mark.name === 'mo' ? UNDER[ACCENTS[mark.text.trim()] ?? mark.text.trim()] : undefined;
  if (command) return `${command}{${inside}}`;
  return tex === '' ? inside : `\\underset{${tex}}{${inside}}`;
}

/** Scripts all round: on nothing before the base, then on the base. */
function multiscripts(node: MathNode): string {
  const [, ...rest] = node.children;
  const split = rest.findIndex((child) => child.name === 'mprescripts');
  const pairs = (kids: readonly MathNode[], start: string): string => {
    let tex = '';
    for (let index = 0; index < kids.length; index += 2) {
      const [lower, upper] = [kids[index], kids[index + 1]].map((kid) => (kid ? write(kid).trim() : ''));
      tex += (index > 0 ? '{}' : start) + (lower ? `_{${lower}}` : '') + (upper ? raised(upper) : '');
    }
    return tex || start;
  };
  const ahead = split < 0 ? '' : pairs(rest.slice(split + 1), '{}');
  return ahead + pairs(split < 0 ? rest : rest.slice(0, split), base(node));
}

const ENCLOSURES: Readonly<Record<string, string>> = {
  box: '\\boxed',
  updiagonalstrike: '\\cancel',
  downdiagonalstrike: '\\bcancel',
  'downdiagonalstrike updiagonalstrike': '\\xcancel',
  horizontalstrike: '\\sout',
  top: '\\overline',
  bottom: '\\underline',
  radical: '\\sqrt',
  phasorangle: '\\phase',
};

function enclosure(notation: string): string {
  return ENCLOSURES[notation.trim().split(/\s+/).sort().join(' ')] ?? '';
}
