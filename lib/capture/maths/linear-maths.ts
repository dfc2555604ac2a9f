import { isElement } from '../dom.ts';

/** U+2061 to U+2064: function application, invisible times, separator and plus; U+200B: zero-width space. */
const INVISIBLE = /[\u2061-\u2064\u200b]/g;

/** Operators that read better with a space on either side. */
const SPACED = /^[=+\-−±<>≤≥≠≈≡∝→⇒⇔∈⊂∩∪]$/;

const PRIMES = /^['′-‴]+$/;

/**
 * Clean MathML on one line, readable without layout: x^2, a_(i+1), (a)/(b), \u221a(x). For a formula whose TeX is not known.
 */
export function linearMaths(element: Element): string {
  return write(element).replace(/\s+/g, ' ').trim();
}

type Part = (index: number) => string;
type Writer = (part: Part, element: Element) => string;

/** How each element is written, from its parts; all others are rows, and scripts go by their names. */
const WRITERS: Readonly<Record<string, Writer>> = {
  ms: (_part, element) => `"${token(element)}"`,
  mo: (_part, element) => operator(element),
  mspace: () => ' ',
  mfrac: (part) => `(${part(0)})/(${part(1)})`,
  msqrt: (_part, element) => `\u221a(${row(element).trim()})`,
  mroot: (part) => `(${part(0)})^(1/${group(part(1))})`,
  mmultiscripts: (_part, element) => scriptsAllRound([...element.children]),
  mtable: (_part, element) => `[${[...element.children].map(write).join('; ')}]`,
  mtr: (_part, element) => [...element.children].map((cell) => write(cell).trim()).join(', '),
};

const UNSEEN = /^(mphantom|annotation)/;

function write(element: Element): string {
  const { localName } = element;
  if (UNSEEN.test(localName)) return '';
  const part: Part = (index) => {
    const child = element.children[index];
    return child ? write(child).trim() : '';
  };
  const [, below, above] = /^m(sub|under)?(sup|over)?$/.exec(localName) ?? [];
  if (below ?? above) {
    const base = below ? script(part(0), '_', part(1)) : part(0);
    const all = above ? script(base, '^', part(below ? 2 : 1)) : base;
    return localName.includes('s') ? all : `${all} `;
  }
  const writer = Object.hasOwn(WRITERS, localName) ? WRITERS[localName] : undefined;
  return writer ? writer(part, element) : row(element);
}

function row(element: Element): string {
  return [...element.childNodes].map((node) => (isElement(node) ? write(node) : token(node))).join('');
}

function token(node: Node): string {
  return (node.textContent ?? '').replace(INVISIBLE, '').normalize('NFKC');
}

function operator(element: Element): string {
  const sign = token(element).trim();
  const before = element.previousElementSibling;
  const infix = before !== null && before.localName !== 'mo' && element.nextElementSibling !== null;
  if (infix && SPACED.test(sign)) return ` ${sign} `;
  return sign === ',' ? ', ' : sign;
}

/** In brackets when it is more than one number, name or sign. */
function group(text: string): string {
  return /^([\p{L}\p{M}]+|[\d.]+|.)$/u.test(text) ? text : `(${text})`;
}

function script(base: string, sign: '^' | '_', raised: string): string {
  if (raised === '') return base;
  return PRIMES.test(raised) ? base + raised : base + sign + group(raised);
}

/** Base, then pairs of sub- and superscripts; after `mprescripts` the pairs that stand before the base. */
function scriptsAllRound([base, ...rest]: Element[]): string {
  const split = rest.findIndex((kid) => kid.localName === 'mprescripts');
  const after = split < 0 ? rest : rest.slice(0, split);
  const before = split < 0 ? [] : rest.slice(split + 1);
  const ahead = pairs(before);
  return (ahead && `${ahead} `) + (base ? write(base).trim() : '') + pairs(after);
}

function pairs(kids: Element[]): string {
  return kids.map((kid, index) => script('', index % 2 ? '^' : '_', write(kid).trim())).join('');
}
