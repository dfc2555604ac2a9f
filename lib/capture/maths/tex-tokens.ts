import { plainLetter } from './letters.ts';
import type { MathNode } from './math-tree.ts';
import { type Token, normalTokens } from './normal-tokens.ts';
import { STYLE_COMMANDS, TEXT_STYLES, functionAsTex, signAsTex } from './tex-signs.ts';

/** Pieces of TeX one after the other, apart where a command would run into a letter and a number into a number. */
export function joinTex(pieces: readonly string[]): string {
  let tex = '';
  for (const piece of pieces) {
    if (/\\[a-z]+$/i.test(tex) && /^[a-z]/i.test(piece)) tex += ' ';
    else if (/\d$/.test(tex) && /^\d/.test(piece)) tex += '{}';
    tex += piece;
  }
  return tex;
}

/** Signs that read better with space on either side when they stand between two things. */
const SPACED =
  /^(=|\+|-|<|>|\\(pm|mp|times|neq|leq|geq|approx|equiv|sim|simeq|cong|propto|to|in|notin|ll|gg|cup|cap|subset(eq)?|Rightarrow|Leftrightarrow|mapsto|mid))$/;

/** A token as TeX. */
export function tokenAsTex(
  node: MathNode,
  before: MathNode | undefined,
  after: MathNode | undefined,
): string {
  if (node.name === 'mtext' || node.name === 'ms')
    return textAsTex(node.text, node.attributes['mathvariant']);
  const tokens = normalTokens(node, undefined);
  const applied = after?.name === 'mo' && after.text.trim() === '\u2061';
  const tex = joinTex(tokens.map((token) => partAsTex(token, node, applied)));
  const infix = before !== undefined && before.name !== 'mo' && after !== undefined;
  if (infix && SPACED.test(tex)) return ` ${tex} `;
  // A comma between numbers would be read as part of them.
  return tex === ',' || tex === ';' ? `${tex} ` : tex;
}

function partAsTex({ name, text, variant }: Token, node: MathNode, applied: boolean): string {
  if (name === 'mtext') return textAsTex(text, variant);
  const single = [...text].length === 1;
  if (name !== 'mi' || single) {
    const written = [...text].map(signAsTex).join('');
    return variant === '' ? slanted(text, written, node) : styled(variant, text, written);
  }
  if (variant !== '') return styled(variant, text, joinTex([...text].map(signAsTex)));
  if (node.name === 'mo' && text === 'mod') return '\\bmod';
  const command = functionAsTex(text);
  const word = text.replace(/\s+/g, '\\,');
  return command ?? (applied || word !== text ? `\\operatorname{${word}}` : `\\mathrm{${word}}`);
}

const GREEK_CAPITAL = /^[\u0391-\u03a9]$/;

/** TeX sets a capital Greek letter upright: in italics it needs a word. */
function slanted(text: string, written: string, node: MathNode): string {
  return node.name === 'mi' && GREEK_CAPITAL.test(text) ? `\\mathit{${written}}` : written;
}

function styled(variant: string, text: string, written: string): string {
  if (variant === 'normal' && GREEK_CAPITAL.test(text)) return written;
  const command = STYLE_COMMANDS[variant];
  return command ? `${command}{${written}}` : written;
}

/** Words as TeX, bold or the like where their characters are. */
export function textAsTex(text: string, given = ''): string {
  const pairs = [...text].map(plainLetter);
  const words = pairs.map(([letter]) => letter).join('');
  const clean = words
    .replace(/\s+/g, ' ')
    .replace(/[\\~^#$%&_{}]/g, (sign) => (SPELLED[sign] ? `\\text${SPELLED[sign]}{}` : `\\${sign}`));
  if (clean.trim() === '') return clean === '' ? '' : '\\ ';
  const variant = pairs.find(([, each]) => each !== '')?.[1] ?? given;
  return `${TEXT_STYLES[variant] ?? '\\text'}{${clean}}`;
}

const SPELLED: Readonly<Record<string, string>> = {
  '\\': 'backslash',
  '~': 'asciitilde',
  '^': 'asciicircum',
};

/** Space of some width as TeX, from the names and lengths that MathML knows. */
export function spaceAsTex(width: string | undefined): string {
  const named: Readonly<Record<string, number>> = { thinmathspace: 3, mediummathspace: 4, thickmathspace: 5 };
  const [, number = '', unit = ''] = /^([-+]?[\d.]+)(em|ex|px|pt)?$/.exec(width?.trim() ?? '') ?? [];
  const perEm: Readonly<Record<string, number>> = { em: 18, ex: 8, px: 1.1, pt: 1.5 };
  const eighteenths = named[width ?? ''] ?? Number(number) * (perEm[unit] ?? 18);
  if (!(Math.abs(eighteenths) >= 1)) return '';
  if (eighteenths < 0) return '\\!';
  const steps = [
    [30, '\\qquad'],
    [14, '\\quad'],
    [6, '\\ '],
    [4.6, '\\;'],
    [3.6, '\\:'],
  ] as const;
  return steps.find(([least]) => eighteenths >= least)?.[1] ?? '\\,';
}
