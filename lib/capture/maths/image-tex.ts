/** Pictures that may be of a formula: all that have its TeX, and many that have not. */
export const TEX_IMAGE =
  'img:is([data-tex], [data-latex], [alt*="\\\\"], [alt*="^"], [alt*="_"], [alt*="$"], [alt*="tex:" i], ' +
  '[class*="tex" i], [class*="math" i], [class*="equation" i], [class*="formula" i])';

const DELIMITED = /^(\$\$?|\\[[(])([^]+?)(\$\$?|\\[)\]])$/;

/** Commands, with their argument where that is words. */
const COMMANDS = /\\((text|math|operator|[mh]box|begin|end|label|tag)\w*\*?\s*\{[^{}]*\}|[a-z]+)/gi;

/** Names that stand in formulas without a backslash, too, and products of letters. */
const NAMES = /^((arc)?(sin|cos|tan|cot|sec|csc|log|exp|lim|max|min|mod|sup|inf|det|arg|erf)h?|[A-Z]+)$/;

/** TeX that a picture of a formula has as its alternative text or beside it. Null for any other picture. */
export function texOfImage(image: Element): { tex: string; block: boolean } | null {
  const given = ['data-tex', 'data-latex', 'alt', 'title'].map((name) => image.getAttribute(name)?.trim());
  const said = given.find((each) => each) ?? '';
  const text = said.replace(/^(la)?tex:\s*/i, '');
  const [, open = '', tex = text] = DELIMITED.exec(text) ?? [];
  const noted = given[0] || given[1];
  const hinted = /(^|[\s_-])((la)?tex|math|eqn?|equation|formula)/i.test(image.className) || tex !== said;
  if (!noted && !isTex(tex, hinted)) return null;
  return { tex, block: open === '$$' || open === '\\[' || isBlock(image) };
}

/**
 * Whether text is TeX and not words.
 *
 * @param hinted whether the page says that there is a formula, by delimiters or by a class
 */
export function isTex(text: string, hinted: boolean): boolean {
  const bare = text.replace(COMMANDS, ' ');
  const words = bare.match(/\p{L}{3,}| (of|is|to|in|as|at|by|an|or|on|if) /gu) ?? [];
  const prose = words.filter((word) => !NAMES.test(word)).length;
  if (!text || prose > +hinted || bare.includes('$')) return false;
  if (hinted) return !prose || /[\\^_={}]/.test(text);
  // No path of a file, which begins with a drive or a server, or has an ending.
  if (/\\[a-z]{2}|\\[,;!{}|]/i.test(text)) return !/^([a-z]:|\\)\\\w|\.[a-z]{3,4}$/i.test(text);
  // A power of one letter, number or bracket; an index or another power only in an equation.
  if (/((^|[^a-z])[a-z]|[\d)\]}])\^[\w{(+-]/i.test(text)) return true;
  return /[=<>+*/−×≤≥≈]| - /.test(text) && /(^|[^a-z\d])[a-z]{1,3}(\^|_(\{|[a-z\d]\b))/i.test(text);
}

function isBlock(image: Element): boolean {
  const looks = `${image.className} ${image.getAttribute('style')}`;
  if (/inline/i.test(looks)) return false;
  const parent = image.closest('p, div, dd, center, figure');
  const alone = image.parentElement === parent && parent?.children.length === 1 && !parent.textContent.trim();
  return /display|block/i.test(looks) || alone;
}
