import { MATHML, isElement, isText } from '../dom.ts';

/**
 * MathML of an equation as word processors put it on the clipboard: Office Math Markup Language (ECMA-376 part 1,
 * section 22.1) inside HTML, so that names are in small letters (`m:ssup`) and elements of HTML stand in between.
 *
 * @param equation an `m:omath` element
 */
export function ommlToMathml(equation: Element): Element {
  const math = equation.ownerDocument.createElementNS(MATHML, 'math');
  if (equation.closest('m\\:omathpara')) math.setAttribute('display', 'block');
  math.append(...contentOf(equation));
  return math;
}

/** What stands in an element, wrappers left out. */
function contentOf(parent: Node): Element[] {
  return [...parent.childNodes].flatMap((node) => {
    if (isText(node)) return tokensOf(node.data.trim() === '' ? '' : node.data, node.ownerDocument!);
    if (!isElement(node) || /^m:\w+pr$/.test(node.localName)) return [];
    const write = Object.hasOwn(WRITERS, node.localName) ? WRITERS[node.localName] : undefined;
    return write ? [write(node)] : contentOf(node);
  });
}

type Writer = (element: Element) => Element;

const named = (element: Element, name: string): Element =>
  element.ownerDocument.createElementNS(MATHML, name);

function put(element: Element, name: string, children: Element[], attributes: Record<string, string> = {}) {
  const made = named(element, name);
  for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, value);
  made.append(...children);
  return made;
}

/** The parts of an element with this name, not those of equations within it. */
function partsOf(element: Element, name: string): Element[] {
  return [...element.querySelectorAll(`m\\:${name}`)].filter((part) => {
    let at = part.parentElement;
    while (at && at !== element && !at.localName.startsWith('m:')) at = at.parentElement;
    return at === element;
  });
}

/** A part as one element. */
function part(element: Element, name: string): Element {
  const [found] = partsOf(element, name);
  return row(element, found ? contentOf(found) : []);
}

const row = (element: Element, children: Element[]): Element =>
  children.length === 1 ? children[0]! : put(element, 'mrow', children);

/** What a property says, such as the bracket of `m:dpr`; the last word is had where it is not given. */
function property(element: Element, holder: string, name: string, without: string): string {
  const [properties] = partsOf(element, holder);
  const given = properties?.querySelector(`m\\:${name}`);
  return given ? (given.getAttribute('m:val') ?? '') : without;
}

const sign = (element: Element, text: string, attributes: Record<string, string> = {}): Element => {
  const made = put(element, 'mo', [], attributes);
  made.textContent = text;
  return made;
};

const WRITERS: Readonly<Record<string, Writer>> = {
  'm:r': writeRun,
  'm:f': (from) =>
    put(
      from,
      'mfrac',
      [part(from, 'num'), part(from, 'den')],
      property(from, 'fpr', 'type', '') === 'noBar' ? { linethickness: '0' } : {},
    ),
  'm:ssup': (from) => put(from, 'msup', [part(from, 'e'), part(from, 'sup')]),
  'm:ssub': (from) => put(from, 'msub', [part(from, 'e'), part(from, 'sub')]),
  'm:ssubsup': (from) => put(from, 'msubsup', [part(from, 'e'), part(from, 'sub'), part(from, 'sup')]),
  'm:spre': (from) =>
    put(from, 'mmultiscripts', [
      part(from, 'e'),
      named(from, 'mprescripts'),
      part(from, 'sub'),
      part(from, 'sup'),
    ]),
  'm:rad': (from) => {
    const [degree] = partsOf(from, 'deg');
    const hasDegree = degree !== undefined && contentOf(degree).length > 0;
    return hasDegree
      ? put(from, 'mroot', [part(from, 'e'), part(from, 'deg')])
      : put(from, 'msqrt', [part(from, 'e')]);
  },
  'm:d': writeBrackets,
  'm:nary': writeSum,
  'm:func': (from) => put(from, 'mrow', [part(from, 'fname'), sign(from, '\u2061'), part(from, 'e')]),
  'm:acc': (from) =>
    put(from, 'mover', [part(from, 'e'), sign(from, spacing(property(from, 'accpr', 'chr', '\u0302')))], {
      accent: 'true',
    }),
  'm:bar': (from) =>
    property(from, 'barpr', 'pos', 'bot') === 'top'
      ? put(from, 'mover', [part(from, 'e'), sign(from, '\u203e')])
      : put(from, 'munder', [part(from, 'e'), sign(from, '_')]),
  'm:limlow': (from) => put(from, 'munder', [part(from, 'e'), part(from, 'lim')]),
  'm:limupp': (from) => put(from, 'mover', [part(from, 'e'), part(from, 'lim')]),
  'm:groupchr': (from) =>
    put(from, property(from, 'groupchrpr', 'pos', 'bot') === 'top' ? 'mover' : 'munder', [
      part(from, 'e'),
      sign(from, property(from, 'groupchrpr', 'chr', '\u23df')),
    ]),
  'm:m': (from) => tableOf(from, partsOf(from, 'mr')),
  'm:eqarr': (from) =>
    put(
      from,
      'mtable',
      partsOf(from, 'e').map((line) => put(from, 'mtr', [put(from, 'mtd', contentOf(line))])),
    ),
};

const tableOf = (element: Element, rows: Element[]): Element =>
  put(
    element,
    'mtable',
    rows.map((one) =>
      put(
        element,
        'mtr',
        partsOf(one, 'e').map((cell) => put(element, 'mtd', contentOf(cell))),
      ),
    ),
  );

/** Accents are given as combining characters, which stand by themselves here. */
const ACCENTS: Readonly<Record<string, string>> = {
  '\u0302': '^',
  '\u0303': '~',
  '\u0304': '\u00af',
  '\u0305': '\u00af',
  '\u0307': '\u02d9',
  '\u0308': '\u00a8',
  '\u20d7': '\u2192',
};
const spacing = (accent: string): string => ACCENTS[accent] ?? accent;

function writeBrackets(element: Element): Element {
  const between = property(element, 'dpr', 'sepchr', '|');
  const inner = partsOf(element, 'e').flatMap((one, i) => [
    ...(i > 0 ? [sign(element, between)] : []),
    row(element, contentOf(one)),
  ]);
  const [open, close] = [property(element, 'dpr', 'begchr', '('), property(element, 'dpr', 'endchr', ')')];
  const fence = (text: string) => (text === '' ? [] : [sign(element, text)]);
  return put(element, 'mrow', [...fence(open), ...inner, ...fence(close)]);
}

function writeSum(element: Element): Element {
  const symbol = sign(element, property(element, 'narypr', 'chr', '\u222b'));
  const above = property(element, 'narypr', 'limloc', 'subSup') === 'undOvr';
  const has = (name: string) => partsOf(element, name).some((one) => contentOf(one).length > 0);
  const [below, over] = [has('sub'), has('sup')];
  const name = above
    ? `m${below ? 'under' : ''}${over ? 'over' : ''}`
    : `m${below ? 'sub' : ''}${over ? 'sup' : ''}`;
  const limits = [...(below ? [part(element, 'sub')] : []), ...(over ? [part(element, 'sup')] : [])];
  const whole = limits.length > 0 ? put(element, name, [symbol, ...limits]) : symbol;
  return put(element, 'mrow', [whole, part(element, 'e')]);
}

/** A run of characters: words where it says so, else numbers, signs and letters. */
function writeRun(element: Element): Element {
  const text = textOf(element);
  const properties = element.querySelector('m\\:rpr');
  if (properties?.querySelector('m\\:nor')) {
    const made = named(element, 'mtext');
    made.textContent = text;
    return made;
  }
  const isUpright = properties?.querySelector('m\\:sty')?.getAttribute('m:val') === 'p';
  if (isUpright && /^\p{L}{2,}$/u.test(text.trim())) {
    const made = named(element, 'mi');
    made.textContent = text.trim();
    return made;
  }
  return row(element, tokensOf(text, element.ownerDocument));
}

/** The characters of a run, its properties left out. */
function textOf(node: Node): string {
  return [...node.childNodes]
    .map((child) => {
      if (isText(child)) return child.data;
      return isElement(child) && !/^m:\w+pr$/.test(child.localName) ? textOf(child) : '';
    })
    .join('')
    .replace(/\s+/g, ' ');
}

function tokensOf(text: string, doc: Document): Element[] {
  // Letters of the mathematical alphabets are letters; their look is MathML's own.
  const plain = text.normalize('NFKC');
  return [...plain.matchAll(/\d+(?:[.,]\d+)*|\p{L}\p{M}*|[^\s\d\p{L}]/gu)].map(([token]) => {
    const name = /^\d/.test(token) ? 'mn' : /^\p{L}/u.test(token) ? 'mi' : 'mo';
    const made = doc.createElementNS(MATHML, name);
    made.textContent = token === '-' ? '\u2212' : token;
    return made;
  });
}
