import { type Variant, plainLetter } from './letters.ts';
import type { MathNode } from './math-tree.ts';

/** A token in normal form: a name or word, a number, a sign, or text. */
export interface Token {
  name: 'mi' | 'mn' | 'mo' | 'mtext';
  text: string;
  /** '' for what is usual: a single letter in italics, a word or number upright. */
  variant: Variant | 'normal';
}

/** U+2061 to U+2064: function application, invisible times, separator and plus; zero-width space; text or emoji form. */
// eslint-disable-next-line no-misleading-character-class -- combining marks are what it looks for
const INVISIBLE = /[\u2061-\u2064\u200b\u2060\ufe00-\ufe0f]/g;

/** Signs that typesetters use for one another, by the one that stands for all. Each pair looks the same in print. */
const SAME: Readonly<Record<string, string>> = {
  '-': '\u2212',
  '\u2010': '\u2212',
  '\u2011': '\u2212',
  '*': '\u2217',
  "'": '\u2032',
  '\u2019': '\u2032',
  '\u00b7': '\u22c5',
  '\u2223': '|',
  '\u2225': '\u2016',
  '\u2236': ':',
  '\u2215': '/',
  '\\': '\u2216',
  '\u2329': '\u27e8',
  '\u232a': '\u27e9',
  '\u3008': '\u27e8',
  '\u3009': '\u27e9',
  '\u2206': '\u0394',
  '\u00b5': '\u03bc',
  '\u02da': '\u2218',
  '\u25cb': '\u2218',
  '\u2a7d': '\u2264',
  '\u2a7e': '\u2265',
  '\u27f6': '\u2192',
  '\u27f5': '\u2190',
  '\u27f9': '\u21d2',
  '\u27f8': '\u21d0',
  '\u27fa': '\u21d4',
  '\u27f7': '\u2194',
};

/** Double and triple primes, and ellipses of letters, as their parts. */
const PARTS: Readonly<Record<string, string>> = {
  '\u2033': '\u2032\u2032',
  '\u2034': '\u2032\u2032\u2032',
  '\u2057': '\u2032\u2032\u2032\u2032',
  '\u2254': ':=',
};

/** Letters that are signs, which fonts draw in one way only. */
const SLANTLESS = /^[\u210f\u2113\u2118\u2135-\u2138\u211c\u2111]$/;

/** The tokens that an <mi>, <mn>, <mo>, <ms> or <mtext> stands for; none for what cannot be seen. */
export function normalTokens(node: MathNode, inherited: string | undefined): Token[] {
  const given = (node.attributes['mathvariant'] ?? inherited) as Variant | 'normal' | undefined;
  if (node.name === 'mtext' || node.name === 'ms') return textTokens(node, given);
  const bare = node.text.replace(INVISIBLE, '').normalize('NFC').replace(/\s+/g, ' ').trim();
  if (/\p{L}|\p{Nd}/u.test(bare) && /^[\p{Lu}\p{Ll}\p{Lt}\p{Lo}\p{M}\p{Nd} ]+$/u.test(bare))
    return lettersOf(node, bare, given);
  if (/^[\d.,\u00a0 ]*\d[\d.,\u00a0 ]*$/.test(bare)) return numberTokens(bare, given ?? '');
  const signs = [...bare].map((char) => SAME[char] ?? char).join('');
  return [...signs]
    .flatMap((char) => [...(PARTS[char] ?? char)])
    .filter((char) => char.trim() !== '')
    .map((char) => signOf(char));
}

function textTokens(node: MathNode, given: string | undefined): Token[] {
  const pairs = [...node.text.replace(INVISIBLE, '').normalize('NFC')].map(plainLetter);
  const text = pairs
    .map(([letter]) => letter)
    .join('')
    .replace(/\s+/g, ' ')
    .trim();
  const found = pairs.find(([, variant]) => variant !== '')?.[1] ?? given ?? '';
  return text === '' ? [] : [{ name: 'mtext', text, variant: found === 'normal' ? '' : (found as Variant) }];
}

function lettersOf(node: MathNode, bare: string, given: Variant | 'normal' | undefined): Token[] {
  const pairs = [...bare].map(plainLetter);
  const text = pairs.map(([letter]) => SAME[letter] ?? letter).join('');
  const variant = pairs.find(([, each]) => each !== '')?.[1] ?? given;
  if (/^\d+$/.test(text)) return numberTokens(text, variant ?? '');
  const single = [...text].length === 1;
  // An operator or number token has no italics of its own.
  const usual = single && node.name === 'mi' ? 'italic' : 'normal';
  const shown = SLANTLESS.test(text) ? usual : (variant ?? usual);
  const plain = single ? shown === 'italic' : shown === 'normal';
  return [{ name: 'mi', text, variant: plain ? '' : shown }];
}

function numberTokens(text: string, variant: Variant | 'normal'): Token[] {
  const number = /^[\d.,\u00a0 ]*\d/.exec(text)?.[0] ?? text;
  const end = text.slice(number.length).trim();
  const digits = number.replace(/[\s\u00a0]/g, '');
  const token: Token = { name: 'mn', text: digits, variant: variant === 'normal' ? '' : variant };
  return [token, ...[...end].map(signOf)];
}

function signOf(sign: string): Token {
  const [plain, variant] = plainLetter(sign);
  // A sign has no slant: only a bold one is another.
  return { name: 'mo', text: plain, variant: variant.includes('bold') ? 'bold' : '' };
}
