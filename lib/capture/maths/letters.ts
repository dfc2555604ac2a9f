/** A style of letters, by MathML's name for it; '' for plain ones. */
export type Variant =
  | ''
  | 'bold'
  | 'italic'
  | 'bold-italic'
  | 'script'
  | 'bold-script'
  | 'fraktur'
  | 'double-struck'
  | 'bold-fraktur'
  | 'sans-serif'
  | 'bold-sans-serif'
  | 'sans-serif-italic'
  | 'sans-serif-bold-italic'
  | 'monospace';

const LATIN =
  'bold,italic,bold-italic,script,bold-script,fraktur,double-struck,bold-fraktur,sans-serif,bold-sans-serif,' +
  'sans-serif-italic,sans-serif-bold-italic,monospace';
const GREEK = 'bold,italic,bold-italic,bold-sans-serif,sans-serif-bold-italic';
const DIGITS = 'bold,double-struck,sans-serif,bold-sans-serif,monospace';

/** One style's Greek letters in the order of Unicode's block, the variant forms apart from the usual ones. */
const GREEK_LETTERS = 'ΑΒΓΔΕΖΗΘΙΚΛΜΝΞΟΠΡϴΣΤΥΦΧΨΩ∇αβγδεζηθικλμνξοπρςστυφχψω∂ϵϑϰϕϱϖ';

/** Letters that Unicode had before it got the block of mathematical ones. */
const EARLIER: readonly (readonly [Variant, string, string])[] = [
  ['italic', '\u210e', 'h'],
  ['script', '\u212c\u2130\u2131\u210b\u2110\u2112\u2133\u211b\u212f\u210a\u2134', 'BEFHILMRego'],
  ['fraktur', '\u212d\u210c\u2111\u211c\u2128', 'CHIRZ'],
  ['double-struck', '\u2102\u210d\u2115\u2119\u211a\u211d\u2124', 'CHNPQRZ'],
];

/**
 * The plain letter or digit behind one of Unicode's mathematical alphanumerics, with its style. Unlike NFKC it keeps
 * the two forms of epsilon, theta, kappa, phi, rho and pi apart. Any other character comes back as it is.
 */
export function plainLetter(char: string): [letter: string, variant: Variant] {
  const code = char.codePointAt(0) ?? 0;
  const at = (first: number, names: string, letters: string): [string, Variant] => [
    letters[(code - first) % letters.length]!,
    names.split(',')[Math.floor((code - first) / letters.length)] as Variant,
  ];
  if (code >= 0x1d400 && code < 0x1d6a4) return at(0x1d400, LATIN, ALPHABET);
  if (code >= 0x1d6a8 && code < 0x1d7ca) return at(0x1d6a8, GREEK, GREEK_LETTERS);
  if (code >= 0x1d7ce && code < 0x1d800) return at(0x1d7ce, DIGITS, '0123456789');
  if (code === 0x1d6a4 || code === 0x1d6a5) return [code % 2 ? '\u0237' : '\u0131', 'italic'];
  for (const [variant, letters, plain] of EARLIER) {
    const index = letters.indexOf(char);
    if (index >= 0) return [plain[index]!, variant];
  }
  return [char, ''];
}

/** Latin letters in a style, as Unicode has them; any other character as it is. */
export function styledText(text: string, variant: string): string {
  const style = LATIN.split(',').indexOf(variant);
  const earlier = EARLIER.filter(([name]) => name === variant);
  return [...text]
    .map((char) => {
      const found = earlier.find(([, , plain]) => plain.includes(char));
      const at = ALPHABET.indexOf(char);
      if (found) return found[1][found[2].indexOf(char)]!;
      return style < 0 || at < 0 ? char : String.fromCodePoint(0x1d400 + style * 52 + at);
    })
    .join('');
}

const ALPHABET = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz';
