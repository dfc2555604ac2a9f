/** Names of Greek letters in the order of the Unicode block, from U+03B1 (alpha) to U+03C9 (omega). */
const GREEK =
  `alpha beta gamma delta epsilon zeta eta theta iota kappa lambda mu nu xi omicron pi rho sigma sigma tau
  upsilon phi chi psi omega`.split(/\s+/);

const FIRST_SMALL = 0x3b1;
const CAPITAL_TO_SMALL = 0x20;

/** Letter variants that Unicode keeps apart from the block's main run. */
const VARIANTS = { ϑ: 'theta', ϕ: 'phi', ϖ: 'pi', ϱ: 'rho', ϵ: 'epsilon', ϰ: 'kappa' };

const SIGNS = new Map(
  Object.entries({
    ...VARIANTS,
    '∫': 'integral',
    '∑': 'sum',
    '∏': 'product',
    '√': 'sqrt',
    '∞': 'infinity',
    '∂': 'partial',
    '∇': 'nabla',
  }),
);

/** Words for functions that formulas shorten. */
const SHORT = new Map(
  Object.entries({
    sin: 'sine',
    cos: 'cosine',
    tan: 'tangent',
    sec: 'secant',
    csc: 'cosecant',
    cosec: 'cosecant',
    cot: 'cotangent',
    log: 'logarithm',
    ln: 'logarithm',
    exp: 'exponential',
    lim: 'limit',
    det: 'determinant',
  }),
);

/** TeX's commands for signs. */
const COMMANDS = new Map(
  Object.entries({
    int: 'integral',
    iint: 'integral',
    iiint: 'integral',
    oint: 'integral',
    sum: 'sum',
    prod: 'product',
    sqrt: 'sqrt',
    infty: 'infinity',
    partial: 'partial',
    nabla: 'nabla',
  }),
);

/** TeX's commands for functions, which read as they are spelt. */
const FUNCTIONS = new Set(
  'arccos arcsin arctan arg cosh coth curl deg div dim gcd grad ker max min sinh tanh'.split(' '),
);

/** The small letter that a Greek letter's name stands for; null for any other word. */
export function greekLetterOf(name: string): string | null {
  const at = GREEK.indexOf(name);
  return at < 0 ? null : String.fromCodePoint(FIRST_SMALL + at);
}

/** The word that a Greek letter or a mathematical sign is read as; null for anything else. */
export function wordOfSign(sign: string): string | null {
  const special = SIGNS.get(sign);
  if (special) return special;
  if (sign.length !== 1) return null;
  const code = sign.charCodeAt(0);
  const small = code < FIRST_SMALL ? code + CAPITAL_TO_SMALL : code;
  return GREEK[small - FIRST_SMALL] ?? null;
}

/** The word that a TeX command such as \omega or \tanh is read as; null for one that only sets type. */
export function wordOfCommand(command: string): string | null {
  const name = command.slice(1).replace(/^var(?=epsilon|theta|phi|pi|rho|sigma|kappa)/, '');
  const small = name.toLowerCase();
  if (GREEK.includes(small)) return small;
  return COMMANDS.get(name) ?? (FUNCTIONS.has(name) || SHORT.has(name) ? name : null);
}

/** The full word for a function's short name ("sin" is "sine"); any other word stays as it is. */
export const fullName = (word: string): string => SHORT.get(word) ?? word;
