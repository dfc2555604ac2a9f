import type { Nodes, Parents, PhrasingContent, RootContent } from 'mdast';
import { toDom } from 'hast-util-to-dom';
import { toHast } from 'mdast-util-to-hast';
import { type Pasted, cleanPasted } from '#lib/capture/own/own-passage.ts';
import { formulaIn, lineOfTex, parseMarkdown, sourceOf } from './dialect.ts';

/**
 * Markdown as a passage of its own: formulas between dollar signs or LaTeX's brackets become MathML, an address stands
 * behind the words that link to it, and pictures come along where they are data URLs.
 *
 * @param doc any document of the window that the work is done in
 */
export function passageOfMarkdown(text: string, doc: Document): Pasted {
  const source = withDollars(text);
  const root = parseMarkdown(source);
  readChildren(root, source);
  const inert = doc.implementation.createHTMLDocument('');
  const holder = inert.createElement('div');
  holder.append(toDom(toHast(root), { fragment: true, document: inert }));
  return cleanPasted(holder, doc);
}

/** TeX between LaTeX's brackets, which Markdown takes for escaped brackets, between dollar signs; code stays as it is. */
const withDollars = (text: string): string =>
  text.replace(
    /(```[\s\S]*?```|`[^`\n]+`)|(?<!\\)\\\(([\s\S]+?)\\\)|(?<!\\)\\\[([\s\S]+?)\\\]/g,
    (all, code: string | undefined, inLine: string | undefined, apart: string | undefined) => {
      if (code !== undefined) return all;
      const signs = inLine === undefined ? '$$' : '$';
      return signs + lineOfTex(inLine ?? apart!).trim() + signs;
    },
  );

function readChildren(parent: Parents, source: string): void {
  const read = parent.children.flatMap((node) => readNode(node, source));
  parent.children = paired(read) as typeof parent.children;
}

/** Formulas as TeX in the words, to be found there; links with their addresses; what is no Markdown as it was typed. */
function readNode(node: RootContent, source: string): Nodes[] {
  if (node.type === 'math' || node.type === 'inlineMath') {
    const formula = formulaIn(node, source);
    const [before, after] = formula?.display ? ['\\[', '\\]'] : ['\\(', '\\)'];
    const value = formula ? `${before}${formula.tex}${after}` : sourceOf(node, source);
    const words: PhrasingContent = { type: 'text', value };
    return [node.type === 'math' ? { type: 'paragraph', children: [words] } : words];
  }
  if ('children' in node) readChildren(node, source);
  if (node.type !== 'link') return [node];
  const [only] = node.children;
  const isSaid = node.children.length === 1 && only?.type === 'text' && only.value === node.url;
  return isSaid ? node.children : [...node.children, { type: 'text', value: ` (${node.url})` }];
}

const TAG = /^<(\/?)(sub|sup|u|mark|kbd)>$/;

/** Tags that Markdown lets through, those that a passage may have, as elements; all other markup as it was typed. */
function paired(nodes: Nodes[]): Nodes[] {
  const out: Nodes[] = [];
  for (let i = 0; i < nodes.length; i++) {
    const node = nodes[i]!;
    const [, slash, name] = (node.type === 'html' && TAG.exec(node.value)) || [];
    const end = slash === '' ? nodes.findIndex((one, at) => at > i && isTag(one, `</${name}>`)) : -1;
    if (end > 0) {
      const children = paired(nodes.slice(i + 1, end)) as PhrasingContent[];
      out.push({ type: 'emphasis', data: { hName: name! }, children });
      i = end;
    } else if (node.type !== 'html') out.push(node);
    else if (!node.value.startsWith('<!--')) out.push({ type: 'text', value: node.value });
  }
  return out;
}

const isTag = (node: Nodes, tag: string): boolean => node.type === 'html' && node.value === tag;
