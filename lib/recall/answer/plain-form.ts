const SUPERSCRIPTS = '⁰¹²³⁴⁵⁶⁷⁸⁹⁺⁻ⁿ';
const RAISED = '0123456789+-n';

/**
 * A text with one way of writing each sign: Unicode's compatibility forms (NFKC), one minus, straight quotes, one
 * multiplication sign (·), raised figures as ^ and figures, white space as one space. Case is kept.
 */
export function plainSigns(text: string): string {
  return text
    .replace(
      /[⁰¹²³⁴⁵⁶⁷⁸⁹⁺⁻ⁿ]+/g,
      (raised) => `^${[...raised].map((c) => RAISED[SUPERSCRIPTS.indexOf(c)]).join('')}`,
    )
    .normalize('NFKC')
    .replace(/[\u2010-\u2015\u2212\ufe63\uff0d]/g, '-')
    .replace(/[\u2018\u2019\u201a\u201b\u2032`´]/g, "'")
    .replace(/[\u201c-\u201f\u2033«»]/g, '"')
    .replace(/[×⋅∙•*]/g, '·')
    .replace(/[\u00ad\u200b-\u200d\u2060\ufeff]/g, '')
    .replace(/\s+/g, ' ')
    .trim();
}

/**
 * The form in which two wordings count as the same: plain signs, no case, no punctuation, no article at the front,
 * hyphens between letters as spaces. A minus before a figure, and every sign of mathematics, is kept.
 */
export function plainForm(text: string): string {
  return plainSigns(text)
    .toLowerCase()
    .replace(/(?<=\p{L})-(?=\p{L})/gu, ' ')
    .replace(/["“”]|(?<!\p{L})'|'(?!\p{L})/gu, '')
    .replace(/[.,;:!?](?=\s|$)/g, '')
    .replace(/^(?:the|an?) (?=\S)/, '')
    .replace(/\s*([=<>≤≥+·/^()[\]])\s*/g, '$1')
    .replace(/\s+/g, ' ')
    .trim();
}
