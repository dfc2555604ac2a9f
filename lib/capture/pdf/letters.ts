/** Letters that fonts draw as one, as the letters that they stand for (Unicode's alphabetic presentation forms). */
const LIGATURES: Readonly<Record<string, string>> = {
  '\ufb00': 'ff',
  '\ufb01': 'fi',
  '\ufb02': 'fl',
  '\ufb03': 'ffi',
  '\ufb04': 'ffl',
  '\ufb05': 'st',
  '\ufb06': 'st',
};

/** Text as it is typed: ligatures apart, composed, without control characters, with plain spaces. */
export function plainLetters(text: string): string {
  return text
    .replace(/[\ufb00-\ufb06]/g, (letter) => LIGATURES[letter]!)
    .normalize('NFC')
    .replace(/\s+/g, ' ')
    .replace(/[\p{Cc}\p{Co}\ufffd]/gu, '');
}

const BROKEN = /(\p{L}+)[-\u2010\u00ad]$/u;
const SOFT = /\u00ad\s*$/;
const CJK = /[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\u3000-\u303f\uff00-\uffef]/u;

/**
 * What stands between the end of a line and the start of the next: how many letters of the end go, and what comes in
 * their place. A hyphen that only breaks a word goes; one that `known` words have stays.
 */
export function joint(end: string, start: string, known: string): { drop: number; add: string } {
  const trimmed = end.trimEnd();
  const spaces = end.length - trimmed.length;
  const [next] = /^\p{L}+/u.exec(start.trimStart()) ?? [''];
  const broken = BROKEN.exec(trimmed);
  if (broken && next !== '' && next === next.toLowerCase()) {
    const whole = `${broken[1]}-${next}`.toLowerCase();
    if (!SOFT.test(trimmed) && known.includes(whole)) return { drop: spaces, add: '' };
    return { drop: spaces + 1, add: '' };
  }
  if (CJK.test(trimmed.at(-1) ?? '') && CJK.test(start.trimStart()[0] ?? ''))
    return { drop: spaces, add: '' };
  return { drop: spaces, add: ' ' };
}
