import { formulaRanges } from '../split-tex.ts';

/** A sentence of a text, in UTF-16 units, without white space around it. */
export interface Sentence {
  text: string;
  from: number;
  to: number;
}

/**
 * The sentences of a text (Unicode Standard Annex 29, by Intl.Segmenter). A formula ends none, whatever signs are in it,
 * and neither does a line break within a sentence.
 */
export function sentencesOf(text: string, language = 'en'): Sentence[] {
  // A formula is one word to the segmenter; places stay as they are.
  let plain = text.replace(/\n(?!\s*\n)/g, ' ');
  for (const { from, to } of formulaRanges(text)) {
    const body = text.slice(from, to);
    plain = plain.slice(0, from) + 'x'.repeat(body.length) + plain.slice(to);
  }
  const segmenter = new Intl.Segmenter(language, { granularity: 'sentence' });
  return [...segmenter.segment(plain)].flatMap(({ segment, index }) => {
    const from = index + (segment.length - segment.trimStart().length);
    const to = index + segment.trimEnd().length;
    return to > from ? [{ text: text.slice(from, to).replace(/\s+/g, ' '), from, to }] : [];
  });
}
