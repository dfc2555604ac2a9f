/** A MathML element as plain data, for places that have no document. Tokens have text, all others children. */
export interface MathNode {
  name: string;
  attributes: Record<string, string>;
  children: MathNode[];
  text: string;
}

/** Deeper nesting than this is no formula but an attempt to exhaust the stack. */
const DEEPEST = 200;

const TAG =
  /<!--[\s\S]*?-->|<\?[\s\S]*?\?>|<!\[CDATA\[([\s\S]*?)\]\]>|<(\/?)([\w.:-]+)((?:\s+[\w.:-]+(?:\s*=\s*(?:"[^"]*"|'[^']*'|[^\s"'>]+))?)*)\s*(\/?)>|([^<]+)|</g;
const ATTRIBUTE = /([\w.:-]+)(?:\s*=\s*(?:"([^"]*)"|'([^']*)'|([^\s"'>]+)))?/g;

/**
 * The tree of one <math> (or another MathML element) from its markup, as serialisers write it: prefixes, comments,
 * CDATA, and character references by number or by the names in `NAMED`. Null where tags do not match or anything
 * stands outside the element.
 */
// eslint-disable-next-line complexity -- one case after another, each a kind of element or sign
export function parseMath(markup: string): MathNode | null {
  const top = mathNode('');
  const open: MathNode[] = [top];
  for (const [all, cdata, end, qualified, attributes, empty, text] of markup.trim().matchAll(TAG)) {
    const parent = open.at(-1)!;
    if (qualified !== undefined) {
      const name = qualified.replace(/^.*:/, '');
      if (end) {
        if (open.length === 1 || open.pop()?.name !== name) return null;
      } else {
        const node = mathNode(name, attributesOf(attributes ?? ''));
        parent.children.push(node);
        if (!empty) open.push(node);
        if (open.length > DEEPEST) return null;
      }
    } else if (text !== undefined || cdata !== undefined) {
      parent.text += cdata ?? decode(text ?? '');
    } else if (all === '<') return null;
  }
  const [only, ...more] = top.children;
  return only && more.length === 0 && open.length === 1 && top.text.trim() === '' ? only : null;
}

export function mathNode(
  name: string,
  attributes: Record<string, string> = {},
  children: MathNode[] = [],
  text = '',
): MathNode {
  return { name, attributes, children, text };
}

/** The markup of a tree, in the namespace of MathML only where a parser of HTML puts it by itself. */
export function writeMath(node: MathNode): string {
  const attributes = Object.entries(node.attributes)
    .map(([name, value]) => ` ${name}="${encode(value).replace(/"/g, '&quot;')}"`)
    .join('');
  const content = node.children.length > 0 ? node.children.map(writeMath).join('') : encode(node.text);
  return `<${node.name}${attributes}>${content}</${node.name}>`;
}

function attributesOf(source: string): Record<string, string> {
  const attributes: Record<string, string> = {};
  for (const [, name, double, single, bare] of source.matchAll(ATTRIBUTE)) {
    if (name && !/^xmlns\b/.test(name)) attributes[name] = decode(double ?? single ?? bare ?? '');
  }
  return attributes;
}

/** The names that XML has itself, and those that editors write for what cannot be seen. */
const NAMED: Readonly<Record<string, string>> = {
  lt: '<',
  gt: '>',
  amp: '&',
  quot: '"',
  apos: "'",
  nbsp: '\u00a0',
  minus: '\u2212',
  times: '\u00d7',
  sdot: '\u22c5',
  plusmn: '\u00b1',
  infin: '\u221e',
  pi: '\u03c0',
  prime: '\u2032',
  int: '\u222b',
  sum: '\u2211',
  thinsp: '\u2009',
  ApplyFunction: '\u2061',
  af: '\u2061',
  InvisibleTimes: '\u2062',
  it: '\u2062',
  InvisibleComma: '\u2063',
  ic: '\u2063',
};

function decode(text: string): string {
  return text.replace(/&(#x[\da-f]+|#\d+|\w+);/gi, (all, reference: string) => {
    if (!reference.startsWith('#')) return Object.hasOwn(NAMED, reference) ? NAMED[reference]! : all;
    const code = /^#x/i.test(reference) ? parseInt(reference.slice(2), 16) : Number(reference.slice(1));
    return code <= 0x10ffff ? String.fromCodePoint(code) : '\ufffd';
  });
}

function encode(text: string): string {
  return text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;');
}
