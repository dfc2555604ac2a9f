import { type MathNode, mathNode, parseMath, writeMath } from './math-tree.ts';
import { isBracketed } from './brackets.ts';
import { ACCENTS, BARS, isLargeOperator } from './operators.ts';
import { type Token, normalTokens } from './normal-tokens.ts';

/**
 * MathML in a form in which two formulas that read the same are the same string; null where the markup is no MathML.
 * What is held equal, and nothing else:
 *
 * - structure: rows within rows, <semantics> and its first part, <mstyle>, <mpadded>, <mfenced> and its brackets, a
 *   table of one cell and its content; scripts at a large operator and limits above and below it; scripts on
 *   brackets with what is in them and on the closing one; <mmultiscripts>
 *   and scripts on nothing before the base; a line drawn by <menclose> and by an accent; empty cells at a row's end
 * - tokens: entities and characters; a letter of Unicode's mathematical alphabets and the plain one with that
 *   mathvariant; single upright letters side by side and a word of them; the element that a sign stands in; signs that
 *   look the same (hyphen and minus, apostrophe and prime, ...: ./normal-tokens.ts), long arrows and short ones
 * - left out: attributes besides mathvariant, the notation of <menclose> and whether a fraction has a line; space of
 *   all kinds (it still parts words and numbers); invisible operators; sizes and stretching; colour; what is hidden;
 *   annotations; displayed or inline
 */
export function normaliseMathml(mathml: string): string | null {
  const math = parseMath(mathml);
  return math ? writeMath(mathNode('math', {}, normalRow([math], undefined))) : null;
}

/** A space that parts what stands on either side. */
const GAP = mathNode('gap');

type Normal = (node: MathNode, variant: string | undefined) => MathNode[];

const row: Normal = (node, variant) => node.children.flatMap((child) => normal(child, variant));
const nothing: Normal = () => [];
const gap: Normal = () => [GAP];
const token: Normal = (node, variant) => {
  const tokens = normalTokens(node, variant).map(nodeOf);
  return tokens.length === 0 && /\s/.test(node.text) ? [GAP] : tokens;
};
/** An element whose every child has its place. */
const placed: Normal = (node, variant) => [
  mathNode(
    node.name,
    {},
    node.children.map((child) => single(child, variant)),
  ),
];
const scripts: Normal = (node, variant) => {
  const [base, ...rest] = node.children.map((child) => single(child, variant));
  const below = /sub|under/.test(node.name) ? rest.shift() : undefined;
  return base ? scripted(base, node.name, below, rest[0]) : [];
};

const NORMAL: Readonly<Record<string, Normal>> = {
  mi: token,
  mn: token,
  mo: token,
  ms: token,
  mtext: token,
  mspace: (node) => (/[1-9]/.test(node.attributes['width'] ?? '') ? [GAP] : []),
  mphantom: gap,
  annotation: nothing,
  'annotation-xml': nothing,
  none: nothing,
  maligngroup: nothing,
  malignmark: nothing,
  semantics: (node, variant) => node.children.slice(0, 1).flatMap((child) => normal(child, variant)),
  maction: (node, variant) => node.children.slice(0, 1).flatMap((child) => normal(child, variant)),
  mstyle: (node, variant) => row(node, node.attributes['mathvariant'] ?? variant),
  mfenced: (node, variant) => row(withFences(node), variant),
  msqrt: (node, variant) => [mathNode('msqrt', {}, normalRow(node.children, variant))],
  mroot: placed,
  mfrac: (node, variant) => {
    const [fraction] = placed(node, variant);
    const bare = /^0+(\.0*)?([a-z]+|%)?$/.test(node.attributes['linethickness']?.trim() ?? '');
    return [{ ...fraction!, attributes: bare ? { linethickness: '0' } : {} }];
  },
  msub: scripts,
  msup: scripts,
  msubsup: scripts,
  munder: scripts,
  mover: scripts,
  munderover: scripts,
  mmultiscripts: multiscripts,
  menclose: enclosed,
  mtable: table,
};

function normal(node: MathNode, variant: string | undefined): MathNode[] {
  const rule = Object.hasOwn(NORMAL, node.name) ? NORMAL[node.name] : undefined;
  if (rule) return rule(node, variant);
  // A border is how one library draws a box.
  if (/\bborder:/.test(node.attributes['style'] ?? ''))
    return enclosed({ ...node, attributes: { notation: 'box' } }, variant);
  return row(node, variant);
}

/** The content as a row: words of upright letters put together, spaces taken out. */
function normalRow(nodes: readonly MathNode[], variant: string | undefined): MathNode[] {
  const found = nodes.flatMap((node) => normal(node, variant));
  const joined: MathNode[] = [];
  for (const [index, node] of found.entries()) {
    const before = found[index - 1];
    const last = joined.at(-1);
    if (last && before && isRun(before, node))
      joined[joined.length - 1] = { ...last, text: last.text + node.text };
    else if (node !== GAP) joined.push(node);
  }
  // A word of upright letters needs no note that it is upright.
  return joined.map((node) => {
    const word =
      node.name === 'mi' && [...node.text].length > 1 && node.attributes['mathvariant'] === 'normal';
    return word ? { ...node, attributes: {} } : node;
  });
}

function isRun(before: MathNode, node: MathNode): boolean {
  const variant = node.attributes['mathvariant'];
  if (before.name !== node.name || before.attributes['mathvariant'] !== variant) return false;
  return node.name === 'mtext' || (node.name === 'mi' && variant !== undefined && variant !== 'italic');
}

/** The content as one element. */
function single(node: MathNode, variant: string | undefined): MathNode {
  const content = normalRow([node], variant);
  return content.length === 1 ? content[0]! : mathNode('mrow', {}, content);
}

const isEmpty = (node: MathNode | undefined): boolean =>
  !node || (node.name === 'mrow' && node.children.length === 0);

/** Scripts or limits on a base; scripts on a bracketed row stand on its closing bracket, as they do in print. */
function scripted(base: MathNode, name: string, below?: MathNode, above?: MathNode): MathNode[] {
  const limits = /under|over/.test(name) && !isLargeOperator(base);
  const lower = isEmpty(below) ? undefined : below;
  const upper = isEmpty(above) ? undefined : above;
  if (!lower && !upper) return [base];
  if (limits) return [marked(base, accent(lower), accent(upper))];
  if (isBracketed(base)) {
    const [last] = base.children.slice(-1);
    return [...base.children.slice(0, -1), ...scripted(last!, name, below, above)];
  }
  const both = lower && upper ? 'msubsup' : lower ? 'msub' : 'msup';
  return [
    mathNode(
      both,
      {},
      [base, lower, upper].filter((part) => !!part),
    ),
  ];
}

/** What stands below and above; one after the other is the same as both at once. */
function marked(base: MathNode, lower: MathNode | undefined, upper: MathNode | undefined): MathNode {
  const [inner, mark] = base.children;
  if (inner && mark && base.name === 'munder' && !lower) return marked(inner, mark, upper);
  if (inner && mark && base.name === 'mover' && !upper) return marked(inner, lower, mark);
  const name = lower && upper ? 'munderover' : lower ? 'munder' : 'mover';
  return mathNode(
    name,
    {},
    [base, lower, upper].filter((part) => !!part),
  );
}

/** An accent as the one sign that stands for all of its forms. */
function accent(mark: MathNode | undefined): MathNode | undefined {
  if (mark?.name !== 'mo') return mark;
  return { ...mark, text: ACCENTS[mark.text] ?? mark.text };
}

function multiscripts(node: MathNode, variant: string | undefined): MathNode[] {
  const [base, ...rest] = node.children;
  if (!base) return [];
  const split = rest.findIndex((child) => child.name === 'mprescripts');
  const after = split < 0 ? rest : rest.slice(0, split);
  const before = split < 0 ? [] : rest.slice(split + 1);
  const pairs = (kids: readonly MathNode[], start: MathNode): MathNode[] => {
    const all: MathNode[] = [];
    for (let index = 0; index < kids.length; index += 2) {
      const [below, above] = [kids[index], kids[index + 1]].map((kid) => kid && single(kid, variant));
      all.push(...scripted(index === 0 ? start : mathNode('mrow'), 'msubsup', below, above));
    }
    return all.length > 0 ? all : [start];
  };
  const ahead = before.length > 0 ? pairs(before, mathNode('mrow')) : [];
  return [...ahead, ...pairs(after, single(base, variant))].filter((each) => !isEmpty(each));
}

function enclosed(node: MathNode, variant: string | undefined): MathNode[] {
  const content = normalRow(node.children, variant);
  const notations = (node.attributes['notation'] ?? 'longdiv').split(/\s+/).sort();
  const bar = notations.length === 1 ? BARS[notations[0]!] : undefined;
  if (!bar) return [mathNode('menclose', { notation: notations.join(' ') }, content)];
  const base = content.length === 1 ? content[0]! : mathNode('mrow', {}, content);
  const line = mathNode('mo', {}, [], ACCENTS['\u203e']);
  return [bar === 'mover' ? marked(base, undefined, line) : marked(base, line, undefined)];
}

function table(node: MathNode, variant: string | undefined): MathNode[] {
  const rows = node.children
    .filter((each) => each.name === 'mtr' || each.name === 'mlabeledtr')
    .map((each) => cellsOf(each, variant));
  while (rows.length > 0 && rows.at(-1)!.length === 0) rows.pop();
  const [only] = rows;
  if (rows.length === 1 && only?.length === 1) return only[0]!.children;
  return rows.length === 0
    ? []
    : [
        mathNode(
          'mtable',
          {},
          rows.map((cells) => mathNode('mtr', {}, cells)),
        ),
      ];
}

function cellsOf(tr: MathNode, variant: string | undefined): MathNode[] {
  const cells = tr.children.map((cell) => mathNode('mtd', {}, normalRow(cell.children, variant)));
  if (tr.name === 'mlabeledtr') cells.shift();
  while (cells.at(-1)?.children.length === 0) cells.pop();
  return cells;
}

function withFences(fenced: MathNode): MathNode {
  const { open = '(', close = ')', separators = ',' } = fenced.attributes;
  const signs = [...separators.replace(/\s+/g, '')];
  const sign = (text: string): MathNode => mathNode('mo', {}, [], text);
  const inside = fenced.children.flatMap((child, index) => {
    const between = signs[Math.min(index, signs.length) - 1] ?? '';
    return [sign(index > 0 ? between : ''), child];
  });
  return mathNode('mrow', {}, [sign(open), ...inside, sign(close)]);
}

function nodeOf({ name, text, variant }: Token): MathNode {
  return mathNode(name, variant === '' ? {} : { mathvariant: variant }, [], text);
}
