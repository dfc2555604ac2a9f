import type { MathNode } from './math-tree.ts';

/** Environments that bring the brackets with them. */
const MATRICES: Readonly<Record<string, string>> = {
  '()': 'pmatrix',
  '[]': 'bmatrix',
  '{}': 'Bmatrix',
  '||': 'vmatrix',
  '\u2223\u2223': 'vmatrix',
  '\u2016\u2016': 'Vmatrix',
  '\u2225\u2225': 'Vmatrix',
  '{': 'cases',
};

const BRACKETS: Readonly<Record<string, string>> = {
  '': '.',
  '{': '\\{',
  '}': '\\}',
  '\u2016': '\\|',
  '\u2225': '\\|',
  '\u2223': '|',
  '\u27e8': '\\langle',
  '\u27e9': '\\rangle',
  '\u230a': '\\lfloor',
  '\u230b': '\\rfloor',
  '\u2308': '\\lceil',
  '\u2309': '\\rceil',
};

export function isTable(node: MathNode): boolean {
  return node.name === 'mtable';
}

/** A table as TeX, with the brackets around it (either may be ''), or null for none. */
export function arrayAsTex(
  table: MathNode,
  brackets: [open: string, close: string] | null,
  writeCell: (cell: MathNode) => string,
): string {
  const rows = table.children.map((row) => {
    const cells = row.name === 'mlabeledtr' ? row.children.slice(1) : row.children;
    const tex = cells.map((cell) => writeCell(cell).trim()).join(' & ');
    // After a line break TeX takes these for an argument.
    return /^[[*]/.test(tex) ? `{}${tex}` : tex;
  });
  const write = (name: string): string => `\\begin{${name}} ${rows.join(' \\\\ ')} \\end{${name}}`;
  if (!brackets) return write(isAligned(table) ? 'aligned' : 'matrix');
  const matrix = MATRICES[brackets.join('')];
  if (matrix) return write(matrix);
  const [open, close] = brackets.map((sign) => BRACKETS[sign] ?? sign);
  return `\\left${open} ${write(isAligned(table) ? 'aligned' : 'matrix')} \\right${close}`;
}

function isAligned({ attributes }: MathNode): boolean {
  return attributes['displaystyle'] === 'true' || /^right left\b/.test(attributes['columnalign'] ?? '');
}
