import { type Piece, splitTex } from '../split-tex.ts';

/** A style that runs of text are printed in. */
export type BitStyle = 'lead' | 'rest' | 'remark' | 'code' | 'title';

/** A run of words or a formula, with its style. */
export type Bit = Piece & { style: BitStyle };

/** A place between the characters of a text: before character `at` (a UTF-16 unit) of a bit. Formulas are never cut. */
export interface Cut {
  bit: number;
  at: number;
}

/** The bits of a text. Blanks beside a formula that is set apart are none: it begins and ends lines by itself. */
export function bitsOf(style: BitStyle, text: string): Bit[] {
  const pieces = splitTex(text);
  return pieces.flatMap((piece, index): Bit[] => {
    if (piece.kind === 'maths') return [{ ...piece, style }];
    let { text: words } = piece;
    if (isApart(pieces[index - 1])) words = words.trimStart();
    if (isApart(pieces[index + 1])) words = words.trimEnd();
    return words === '' ? [] : [{ ...piece, text: words, style }];
  });
}

const isApart = (piece: Piece | undefined): boolean => piece?.kind === 'maths' && piece.display;

/** What a line says: its lead, then its rest. A line without a rest is a heading or a remark and looks like one. */
export function lineBits(lead: string, rest: string): Bit[] {
  if (rest === '') return bitsOf('remark', lead);
  if (lead === '') return bitsOf('rest', rest);
  return [...bitsOf('lead', lead), { kind: 'words', text: ' ', style: 'rest' }, ...bitsOf('rest', rest)];
}

/** What stands from one cut up to another; without `to`, up to the end. */
export function bitsBetween<B extends Bit>(bits: readonly B[], from: Cut, to?: Cut): B[] {
  return bits.flatMap((bit, index): B[] => {
    if (index < from.bit || (to && index > to.bit)) return [];
    const start = index === from.bit ? from.at : 0;
    const end = to && index === to.bit ? to.at : Infinity;
    if (bit.kind === 'maths') return start === 0 && end > 0 ? [bit] : [];
    const text = bit.text.slice(start, end);
    return text === '' ? [] : [{ ...bit, text }];
  });
}
