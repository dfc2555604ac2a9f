import type { Nodes, Parents, PhrasingContent, Root, RootContent } from 'mdast';
import { toDom } from 'hast-util-to-dom';
import { toHast } from 'mdast-util-to-hast';
import { type Pasted, cleanPasted } from '#lib/capture/own/own-passage.ts';
import { OWN_MARK } from './own-mark.ts';
import { GAP } from './phrases.ts';
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
  readChildren(root, { source, urls: keepDefinitions(root, source) });
  const inert = doc.implementation.createHTMLDocument('');
  const holder = inert.createElement('div');
  // Of nothing, the library would make a document.
  if (root.children.length > 0) holder.append(toDom(toHast(root), { fragment: true, document: inert }));
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

interface Reading {
  source: string;
  /** Addresses by the names that links refer to them by. */
  urls: ReadonlyMap<string, string>;
}

/**
 * What looks like the definition of a link, but that no link refers to, is something that was written. Gives the
 * addresses of the others.
 */
function keepDefinitions(root: Root, source: string): Map<string, string> {
  const referred = new Set<string>();
  const urls = new Map<string, string>();
  const look = (node: Nodes): void => {
    if (node.type === 'linkReference' || node.type === 'imageReference') referred.add(node.identifier);
    // Of two of one name, the first counts.
    if (node.type === 'definition' && !urls.has(node.identifier)) urls.set(node.identifier, node.url);
    if ('children' in node) node.children.forEach(look);
  };
  look(root);
  const asWords = (node: RootContent): RootContent =>
    node.type === 'definition' && (!referred.has(node.identifier) || urls.get(node.identifier) !== node.url)
      ? { type: 'paragraph', children: [{ type: 'text', value: sourceOf(node, source) }] }
      : node;
  const keep = (parent: Parents): void => {
    parent.children = parent.children.map(asWords) as typeof parent.children;
    for (const child of parent.children) if ('children' in child) keep(child);
  };
  keep(root);
  return urls;
}

function readChildren(parent: Parents, reading: Reading): void {
  const read = parent.children.flatMap((node) => readNode(node, reading));
  parent.children = paired(read) as typeof parent.children;
}

const words = (value: string): PhrasingContent => ({ type: 'text', value });

/** Formulas as TeX in the words, to be found there; links with their addresses; what is no Markdown as it was typed. */
function readNode(node: RootContent, reading: Reading): Nodes[] {
  if (node.type === 'math' || node.type === 'inlineMath') {
    const formula = formulaIn(node, reading.source);
    const [before, after] = formula?.display ? ['\\[', '\\]'] : ['\\(', '\\)'];
    const text = words(formula ? `${before}${formula.tex}${after}` : sourceOf(node, reading.source));
    return [node.type === 'math' ? { type: 'paragraph', children: [text] } : text];
  }
  if (node.type === 'code' && (node.lang || node.meta))
    return [{ type: 'paragraph', children: [words([node.lang, node.meta].filter(Boolean).join(' '))] }, node];
  if ('children' in node) readChildren(node, reading);
  return withAddress(node, reading);
}

/** A link as its words, and a picture that does not come along, with the address behind. */
function withAddress(node: RootContent, { urls }: Reading): Nodes[] {
  if (node.type === 'link' || node.type === 'linkReference') {
    const url = node.type === 'link' ? node.url : (urls.get(node.identifier) ?? '');
    const [only] = node.children;
    const isSaid = node.children.length === 1 && only?.type === 'text' && only.value === url;
    return isSaid ? node.children : [...node.children, words(` (${url})`)];
  }
  if (node.type !== 'image' && node.type !== 'imageReference') return [node];
  const url = node.type === 'image' ? node.url : (urls.get(node.identifier) ?? '');
  return /^data:/i.test(url) ? [node] : [node, words(` (${url})`)];
}

/** What we write into files of notes, and nobody reads. */
const SILENT: ReadonlySet<string> = new Set([OWN_MARK, GAP.value]);

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
    else if (!SILENT.has(node.value)) out.push({ type: 'text', value: node.value });
  }
  return out;
}

const isTag = (node: Nodes, tag: string): boolean => node.type === 'html' && node.value === tag;
