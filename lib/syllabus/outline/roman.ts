const ROMAN = /^(x{0,3})(ix|iv|v?i{0,3})$/;
const ONES = ['', 'i', 'ii', 'iii', 'iv', 'v', 'vi', 'vii', 'viii', 'ix'];

/** The value of a Roman numeral from i to xxxix, in small letters or capitals; null for anything else. */
export function numberOfRoman(text: string): number | null {
  const same = text === text.toLowerCase() || text === text.toUpperCase();
  const [, tens, ones] = ROMAN.exec(text.toLowerCase()) ?? [];
  if (!same || text === '' || tens === undefined || ones === undefined) return null;
  return 10 * tens.length + ONES.indexOf(ones);
}

/** The place of a single Latin letter in the alphabet, from 1; null for anything else. */
export function numberOfLetter(text: string): number | null {
  return /^[a-z]$/i.test(text) ? text.toLowerCase().charCodeAt(0) - 96 : null;
}
