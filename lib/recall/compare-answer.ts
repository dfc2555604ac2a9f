import { hasTex, splitTex } from '#lib/notes/split-tex.ts';
import { plainForm, plainSigns } from './answer/plain-form.ts';
import { type Likeness, likeness, readQuantity } from './answer/quantity.ts';
import { choicesOf } from './marks.ts';

/** Why marks are suggested, or are not. */
export type Reason =
  | 'same'
  | 'sameButForm'
  | 'sameNumber'
  | 'sameInOtherUnit'
  | 'sameMaths'
  | 'sameTerms'
  | 'someTerms'
  | 'unitMissing'
  | 'nothingTyped'
  | 'cannotTell';

/** What a typed answer suggests. The student's own marking decides. */
export interface Suggestion {
  /** Null where it cannot be told: then both answers are only laid side by side. Never 0. */
  marks: number | null;
  reason: Reason;
  /** Of an answer that is a list: how many of its terms were there, of how many. */
  terms: { found: number; of: number } | null;
}

export interface Comparing {
  outOf: number;
  /** Whether two formulas in TeX (no delimiters) render to the same MathML; false where either does not render. */
  sameMaths(one: string, other: string): boolean;
}

/**
 * Compare a typed answer with the answer kept, leniently: case, spacing, punctuation, Unicode forms, ways to write a
 * number, units, TeX that renders the same, terms of a list in any order. What is not the same in one of these ways
 * is never called wrong: it cannot be told.
 */
export function compareAnswer(typed: string, kept: string, comparing: Comparing): Suggestion {
  const full = (reason: Reason): Suggestion => ({ marks: comparing.outOf, reason, terms: null });
  const unsure = (reason: Reason): Suggestion => ({ marks: null, reason, terms: null });
  if (typed.trim() === '') return unsure('nothingTyped');
  if (typed.trim() === kept.trim()) return full('same');
  if (hasTex(kept) || hasTex(typed)) {
    return sameWithMaths(typed, kept, comparing) ? full('sameMaths') : unsure('cannotTell');
  }
  const [one, other] = [plainSigns(typed), plainSigns(kept)];
  const byNumber = numbersOf(one, other);
  if (byNumber)
    return byNumber === 'sameNumber' || byNumber === 'sameInOtherUnit' ? full(byNumber) : unsure(byNumber);
  const form = plainForm(typed);
  if (form !== '' && form === plainForm(kept) && sameCaseWhereItCounts(one, other))
    return full('sameButForm');
  return byTerms(typed, kept, comparing.outOf) ?? unsure('cannotTell');
}

/** What two answers are to each other of which at least one is a quantity; null where neither is. */
function numbersOf(typed: string, kept: string): Reason | null {
  const [mine, wanted] = [readQuantity(typed), readQuantity(kept)];
  if (!mine && !wanted) return null;
  // A number against something that is none: "5 Mm" is not "5 mm", though it is but for its case.
  if (!mine || !wanted) return 'cannotTell';
  return REASONS[likeness(mine, wanted)];
}

const REASONS: Readonly<Record<Likeness, Reason>> = {
  same: 'sameNumber',
  sameInOtherUnit: 'sameInOtherUnit',
  noUnit: 'unitMissing',
  differs: 'cannotTell',
};

/** Letters that stand alone, and up to three beside figures; but not the words a and I before a longer word. */
const SYMBOLS = /(?![aAI] \p{L}{2})(?<![\p{L}'])\p{L}(?![\p{L}'])|(?<=\d ?)\p{L}{1,3}(?!\p{L})/gu;

/** A symbol's case counts: k is not K, A not a, 3 mW not 3 MW. */
function sameCaseWhereItCounts(one: string, other: string): boolean {
  const symbols = (text: string): string => (text.match(SYMBOLS) ?? []).join(' ');
  return symbols(one) === symbols(other);
}

/** Formulas against formulas and words against words, in their order; or a formula typed without delimiters. */
function sameWithMaths(typed: string, kept: string, { sameMaths }: Comparing): boolean {
  const isBlank = (text: string): boolean => plainForm(text) === '';
  const parts = (text: string) =>
    splitTex(text).filter((piece) => piece.kind === 'maths' || !isBlank(piece.text));
  const [one, other] = [parts(typed), parts(kept)];
  const texOf = (pieces: ReturnType<typeof parts>, text: string): string | null => {
    if (pieces.length !== 1) return null;
    const [piece] = pieces;
    return piece!.kind === 'maths' ? piece!.tex : text.trim();
  };
  const [mine, wanted] = [texOf(one, typed), texOf(other, kept)];
  if (mine !== null && wanted !== null) return sameMaths(mine, wanted);
  return (
    one.length === other.length &&
    one.every((piece, i) => {
      const against = other[i]!;
      if (piece.kind === 'maths') return against.kind === 'maths' && sameMaths(piece.tex, against.tex);
      return against.kind === 'words' && plainForm(piece.text) === plainForm(against.text);
    })
  );
}

/** A term of a list is short. Our choice. */
const LONGEST_TERM = 4;

/** Words by which the order of a list may count. */
const ORDERED = /\b(?:first|second|then|next|before|after|finally|last|from|to|not)\b/i;

/** The terms of a list, in plain form; null where the text is none, or its order may count. */
function termsOf(text: string): string[] | null {
  if (ORDERED.test(text)) return null;
  const terms = text
    .split(/[;\n]|,(?!\d)|\band\b|(?:^|\s)&(?=\s)/i)
    .map(plainForm)
    .filter((term) => term !== '');
  const isTerm = (term: string): boolean => term.split(' ').length <= LONGEST_TERM && /\p{L}{2}/u.test(term);
  return terms.length > 1 && terms.every(isTerm) && new Set(terms).size === terms.length ? terms : null;
}

/** All terms in any order give full marks; some of them, and nothing else, give part. */
function byTerms(typed: string, kept: string, outOf: number): Suggestion | null {
  const wanted = termsOf(kept);
  if (!wanted) return null;
  const mine = termsOf(typed) ?? (ORDERED.test(typed) ? [] : [plainForm(typed)]);
  const found = mine.filter((term) => wanted.includes(term)).length;
  // A term that is not in the answer may be another word for one that is.
  if (found === 0 || found < mine.length) return null;
  const terms = { found, of: wanted.length };
  if (found === wanted.length) return { marks: outOf, reason: 'sameTerms', terms };
  const earned = (outOf * found) / wanted.length;
  const part = choicesOf(outOf).filter(
    ({ marks, judgement }) => judgement === 'part' && marks <= Math.max(earned, 0.5),
  );
  return part[0] ? { marks: part[0].marks, reason: 'someTerms', terms } : null;
}
