import type { Nodes, Root } from 'mdast';
import { fromMarkdown } from 'mdast-util-from-markdown';
import { gfmTableFromMarkdown, gfmTableToMarkdown } from 'mdast-util-gfm-table';
import { type InlineMath, mathFromMarkdown, mathToMarkdown } from 'mdast-util-math';
import { toMarkdown } from 'mdast-util-to-markdown';
import { gfmTable } from 'micromark-extension-gfm-table';
import { math } from 'micromark-extension-math';

/** CommonMark with formulas between dollar signs and with tables, as most programs for Markdown read it. */
export const parseMarkdown = (text: string): Root =>
  fromMarkdown(text, {
    extensions: [math(), gfmTable()],
    mdastExtensions: [mathFromMarkdown(), gfmTableFromMarkdown()],
  });

/** Writes Markdown that `parseMarkdown` reads as the same nodes. */
export const writeMarkdown = (root: Root): string =>
  toMarkdown(root, {
    bullet: '-',
    rule: '-',
    listItemIndent: 'one',
    extensions: [gfmTableToMarkdown(), mathToMarkdown(), { handlers: { inlineMath: writeFormula } }],
  });

declare module 'mdast-util-math' {
  interface InlineMathData {
    /** It stands apart: `$$ … $$`, which programs for Markdown take so within a paragraph too. */
    isApart?: boolean;
  }
}

/** A formula in a paragraph. */
export const formulaNode = (tex: string, display: boolean): InlineMath => ({
  type: 'inlineMath',
  value: lineOfTex(tex),
  data: { isApart: display },
});

/** TeX on one line: a line end is a space to it, and what follows "%" on its line is no part of it. */
export const lineOfTex = (tex: string): string =>
  tex.includes('\n')
    ? tex
        .replace(/(?<!\\)%[^\n]*\n/g, '')
        .replace(/\s*\n\s*/g, ' ')
        .trim()
    : tex;

function writeFormula(node: InlineMath): string {
  const { value } = node;
  // An odd number of signs is a formula in the line, an even one a formula apart; none of that length may stand within.
  let size = node.data?.isApart ? 2 : 1;
  while (new RegExp(`(^|[^$])\\$${`{${size}}`}([^$]|$)`).test(value)) size += 2;
  const signs = '$'.repeat(size);
  const padding = /^\$|\$$/.test(value) ? ' ' : '';
  return signs + padding + value + padding + signs;
}
writeFormula.peek = () => '$';

/** What a formula of a parsed text is; null where its dollar signs are money, as in "$5 and $6", or begin none. */
export function formulaIn(node: Nodes, source: string): { tex: string; display: boolean } | null {
  if (node.type !== 'inlineMath' && node.type !== 'math') return null;
  // Words behind the opening signs are no part of a formula that ends on another line.
  if (node.type === 'math') return node.meta ? null : { tex: node.value, display: true };
  const from = node.position?.start.offset ?? 0;
  const to = node.position?.end.offset ?? 0;
  const written = source.slice(from, to);
  const size = /^\$+/.exec(written)?.[0].length ?? 1;
  const inner = written.slice(size, -size);
  // As widely used for such Markdown: nothing but the formula touches the signs, and no digit follows the last one.
  const loose = /^\s/.test(inner) !== /\s$/.test(inner);
  if (size === 1 && (loose || /^\d/.test(source.slice(to)))) return null;
  return { tex: node.value.trim(), display: size % 2 === 0 };
}

/** The text of a node as it stands in the source. */
export const sourceOf = ({ position }: Nodes, source: string): string =>
  source.slice(position?.start.offset ?? 0, position?.end.offset ?? 0);
