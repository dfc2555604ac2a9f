import { stemmer } from 'stemmer';
import { oneSpelling } from '../../syllabus/match/terms.ts';
import { wordOfCommand, wordOfSign } from '../../syllabus/match/maths-words.ts';

/** Commands of TeX that only set type: nobody looks for them. */
const LAYOUT = new Set(
  `left right big Big bigg Bigg bigl bigr Bigl Bigr mathrm mathbf mathit mathsf mathcal mathbb boldsymbol text textrm
  textbf textit mbox operatorname displaystyle textstyle quad qquad begin end limits nolimits ce`.split(
    /\s+/,
  ),
);

const ASCII_WORD = /^[A-Za-z0-9]+$/;
const IN_GROUPS = /^\d{1,3}(,\d{3})+$/;
/** Accents of Latin, Greek and Cyrillic, and the points of Hebrew and Arabic, which may be left out. */
const MARKS = /[\u0300-\u036f\u0591-\u05c7\u064b-\u0652]/g;
const OF_SOMEONE = /['’]s$/i;
const INVISIBLE = /[\u00ad\u200b-\u200d\s_{}]/g;

/**
 * The form in which a word of a text and a word that is looked for meet: without case, accents, typographic variants
 * (NFKC of UAX #15); a sign or TeX command as its name, so that "ω", "\omega" and "omega" are one; numbers with a
 * point and without groups. Empty for what only sets type.
 */
export function folded(token: string): string {
  if (ASCII_WORD.test(token)) return token.toLowerCase();
  if (token.startsWith('\\')) return commandFolded(token);
  const plain = token.normalize('NFKC');
  const sign = wordOfSign(plain);
  if (sign !== null) return sign;
  if (/^\d/.test(plain)) return numberFolded(plain);
  return (
    plain
      .replace(OF_SOMEONE, '')
      .replace(INVISIBLE, '')
      // By way of capitals, as case folding does: "ß" is "ss". The final sigma is a sigma.
      .toUpperCase()
      .toLowerCase()
      .replaceAll('ς', 'σ')
      .normalize('NFD')
      .replace(MARKS, '')
      .normalize('NFC')
  );
}

function commandFolded(token: string): string {
  const name = token.slice(1);
  return LAYOUT.has(name) ? '' : (wordOfCommand(token) ?? name.toLowerCase());
}

/** "1,000" is a thousand; any other comma is the decimal point of most of Europe. */
const numberFolded = (number: string): string =>
  IN_GROUPS.test(number) ? number.replaceAll(',', '') : number.replace(',', '.').replace(INVISIBLE, '');

/**
 * What forms of one word have in common: Porter's stem, British and American spellings being one. A word of another
 * alphabet is its own stem.
 */
export const stemOf = (word: string): string => (/^[a-z]+$/.test(word) ? stemmer(oneSpelling(word)) : word);
