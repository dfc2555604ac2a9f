/** The plain letter behind a mathematical italic one, as a formula's names are drawn; '' for any other character. */
export function fromItalic(char: string): string {
  if (char === '\u210e') return 'h';
  const code = char.codePointAt(0) ?? 0;
  const latin = code - 0x1d434;
  if (latin >= 0 && latin < 52) return String.fromCharCode(latin + (latin < 26 ? 65 : 71));
  const greek = code - 0x1d6e2;
  if (greek < 0 || greek > 57) return '';
  return '∂ϵϑϰϕϱϖ'[greek - 51] ?? String.fromCharCode(greek + (greek < 26 ? 0x391 : 0x397));
}
