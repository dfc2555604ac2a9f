/** A run of plain words, or a formula in TeX, of something the student wrote. */
export type Piece = { kind: 'words'; text: string } | { kind: 'maths'; tex: string; display: boolean };

// LaTeX's delimiters. A lone dollar sign before a space or a digit is money.
const FORMULA =
  /\\\[([\s\S]+?)\\\]|\\\(([\s\S]+?)\\\)|(?<!\\)\$\$([\s\S]+?)(?<!\\)\$\$|(?<![\\$])\$(?![\s$\d])([^$\n]*?[^\s\\$])\$(?![\d$])/g;

/**
 * Splits a text into words and formulas: \( \) and $ $ within a line, \[ \] and $$ $$ set apart. A delimiter without its
 * partner stays words, as does \$. Joined again, the pieces with their delimiters are the text.
 */
export function splitTex(text: string): Piece[] {
  const pieces: Piece[] = [];
  let from = 0;
  for (const match of text.matchAll(FORMULA)) {
    if (match.index > from) pieces.push({ kind: 'words', text: text.slice(from, match.index) });
    const apart = match[1] ?? match[3];
    pieces.push({
      kind: 'maths',
      tex: (apart ?? match[2] ?? match[4])!.trim(),
      display: apart !== undefined,
    });
    from = match.index + match[0].length;
  }
  if (from < text.length) pieces.push({ kind: 'words', text: text.slice(from) });
  return pieces;
}

/** Where the formulas of a text begin and end, with their delimiters, in UTF-16 units. */
export const formulaRanges = (text: string): { from: number; to: number }[] =>
  [...text.matchAll(FORMULA)].map((match) => ({ from: match.index, to: match.index + match[0].length }));

/** Whether there is a formula in a text. */
export const hasTex = (text: string): boolean => splitTex(text).some(({ kind }) => kind === 'maths');
