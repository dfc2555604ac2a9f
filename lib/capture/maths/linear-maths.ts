import { isElement } from '../dom.ts';

/** U+2061 to U+2064: function application, invisible times, separator and plus; U+200B: zero-width space. */
const INVISIBLE = /[\u2061-\u2064\u200b]/g;

/** Operators that read better with a space on either side. */
const SPACED =
  /^[=+\-\u2212\u00b1<>\u2264\u2265\u2260\u2248\u2261\u221d\u2192\u21d2\u21d4\u2208\u2282\u2229\u222a]$/;

const PRIMES = /^['\u2032-\u2034]+$/;

/**
 * MathML on one line, readable without layout: x^2, a_(i+1), (a)/(b), \u221a(x). For a formula whose TeX is not known.
 */
export function linearMaths(element: Element): string {
  return write(element).replace(/\s+/g, ' ').trim();
}

type Part = (index: number) => string;
type Writer = (part: Part, element: Element) => string;

const nothing: Writer = () => '';
const first: Writer = (part) => part(0);

/** How each element is written, from its parts; all others are rows. */
const WRITERS: Readonly<Record<string, Writer>> = {
  mi: (_part, element) => token(element),
  mn: (_part, element) => token(element),
  mtext: (_part, element) => token(element),
  ms: (_part, element) => `"${token(element)}"`,
  mo: (_part, element) => operator(element),
  mspace: () => ' ',
  mphantom: nothing,
  annotation: nothing,
  'annotation-xml': nothing,
  mprescripts: nothing,
  semantics: first,
  maction: first,
  mfrac: (part) => `(${part(0)})/(${part(1)})`,
  msqrt: (_part, element) => `\u221a(${row(element).trim()})`,
  mroot: (part) => `(${part(0)})^(1/${group(part(1))})`,
  msub: (part) => script(part(0), '_', part(1)),
  msup: (part) => script(part(0), '^', part(1)),
  msubsup: (part) => script(script(part(0), '_', part(1)), '^', part(2)),
  munder: (part) => `${script(part(0), '_', part(1))} `,
  mover: (part) => `${script(part(0), '^', part(1))} `,
  munderover: (part) => `${script(script(part(0), '_', part(1)), '^', part(2))} `,
  mmultiscripts: (_part, element) => scriptsAllRound([...element.children]),
  mtable: (_part, element) => `[${[...element.children].map(write).join('; ')}]`,
  mtr: (_part, element) => [...element.children].map((cell) => write(cell).trim()).join(', '),
};

function write(element: Element): string {
  const part: Part = (index) => {
    const child = element.children[index];
    return child ? write(child).trim() : '';
  };
  const writer = Object.hasOwn(WRITERS, element.localName) ? WRITERS[element.localName] : undefined;
  return writer ? writer(part, element) : row(element);
}

function row(element: Element): string {
  return [...element.childNodes]
    .map((node) => (isElement(node) ? write(node) : (node.textContent ?? '').replace(INVISIBLE, '')))
    .join('');
}

function token(element: Element): string {
  return element.textContent.replace(INVISIBLE, '').normalize('NFKC');
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
