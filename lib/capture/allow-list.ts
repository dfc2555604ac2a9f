import { HTML, MATHML } from './dom.ts';

const words = (list: string): string[] => list.split(' ');

/** Attributes that a kept HTML element may have besides `dir` and `lang`. */
const HTML_ATTRIBUTES: Readonly<Record<string, string[]>> = {
  ol: ['start'],
  li: ['value'],
  td: words('colspan rowspan'),
  th: words('colspan rowspan scope'),
  abbr: ['title'],
  img: words('data-picture alt width height'),
};

export const HTML_ELEMENTS: ReadonlySet<string> = new Set(
  words(
    'p br hr h1 h2 h3 h4 h5 h6 ul ol li dl dt dd table caption thead tbody tfoot tr td th blockquote pre code em ' +
      'strong b i u s mark small sub sup abbr q cite dfn kbd samp var span figure figcaption img',
  ),
);

/**
 * Elements of MathML Core (W3C, "Elements and attributes"), without `annotation-xml` (it may hold any markup) and
 * `maction` (tidied into the part that is shown).
 */
export const MATHML_ELEMENTS: ReadonlySet<string> = new Set(
  words(
    'annotation math merror mfrac mi mmultiscripts mn mo mover mpadded mphantom mprescripts mroot mrow ms mspace ' +
      'msqrt mstyle msub msubsup msup mtable mtd mtext mtr munder munderover semantics',
  ),
);

/** MathML Core's global presentational attributes. */
const MATHML_GLOBAL = words('dir displaystyle mathbackground mathcolor mathsize mathvariant scriptlevel');

// The column and row alignments are no part of MathML Core, but without them a system of equations loses its shape
// in browsers that honour them.
const MATHML_ATTRIBUTES: Readonly<Record<string, string[]>> = {
  math: ['display'],
  annotation: ['encoding'],
  mfrac: ['linethickness'],
  mo: words('form fence separator lspace rspace stretchy symmetric maxsize minsize largeop movablelimits'),
  mover: ['accent'],
  mpadded: words('width height depth lspace voffset'),
  mspace: words('width height depth'),
  mtable: words('columnalign rowalign'),
  mtd: words('columnspan rowspan columnalign rowalign'),
  mtr: words('columnalign rowalign'),
  munder: ['accentunder'],
  munderover: words('accent accentunder'),
};

/** Of an image: the number of one of the clip's pictures. Its bytes lie beside the passage, never behind an address. */
const PICTURE_NUMBER = /^\d{1,2}$/;

/** What a value must look like; an attribute not listed takes `LENGTH_OR_WORD`. */
const VALUES: Readonly<Record<string, RegExp>> = {
  dir: /^(ltr|rtl|auto)$/i,
  lang: /^[a-z]{1,8}(-[a-z\d]{1,8})*$/i,
  start: /^-?\d{1,9}$/,
  value: /^-?\d{1,9}$/,
  colspan: /^\d{1,3}$/,
  rowspan: /^\d{1,3}$/,
  scope: /^(row|col)(group)?$/i,
  title: /^[^<>]{1,500}$/,
  'data-picture': PICTURE_NUMBER,
  alt: /^[^<>]{0,2000}$/,
  display: /^(block|inline)$/i,
  encoding: /^application\/x-tex$/i,
};
const LENGTH_OR_WORD = /^[-+.#%\w (),]{1,60}$/;

/** Every attribute name above, for a sanitiser that knows one list for all elements. */
export const ATTRIBUTE_NAMES: readonly string[] = [
  'lang',
  ...MATHML_GLOBAL,
  ...Object.values(HTML_ATTRIBUTES).flat(),
  ...Object.values(MATHML_ATTRIBUTES).flat(),
];

/** Whether a stored passage may hold the element. */
export function isKeptElement(element: Element): boolean {
  if (element.localName === 'img') return isPicturePlace(element);
  if (element.namespaceURI === HTML) return HTML_ELEMENTS.has(element.localName);
  return element.namespaceURI === MATHML && MATHML_ELEMENTS.has(element.localName);
}

/** Whether the element is the place of one of the clip's own pictures. */
export function isPicturePlace(element: Element): boolean {
  return element.namespaceURI === HTML && PICTURE_NUMBER.test(element.getAttribute('data-picture') ?? '');
}

/** Whether a kept element may have the attribute, with that value. */
export function isKeptAttribute(element: Element, { name, value, namespaceURI }: Attr): boolean {
  if (namespaceURI !== null) return false;
  const own = element.namespaceURI === MATHML ? MATHML_ATTRIBUTES : HTML_ATTRIBUTES;
  const common = element.namespaceURI === MATHML ? MATHML_GLOBAL : ['dir', 'lang'];
  if (!common.includes(name) && !own[element.localName]?.includes(name)) return false;
  return (VALUES[name] ?? LENGTH_OR_WORD).test(value);
}
