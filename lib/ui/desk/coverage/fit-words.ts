/**
 * Words in lines of at most `letters`, `lines` of them; what is left over becomes an ellipsis. Nothing at all where not
 * even the first word fits, so that no field shows a torn one.
 */
export function fitWords(words: string, letters: number, lines: number): string[] {
  const fitted: string[] = [];
  const left = words.split(/\s+/).filter(Boolean);
  while (left.length > 0 && fitted.length < lines) {
    let line = '';
    while (left.length > 0 && `${line} ${left[0]}`.trim().length <= letters)
      line = `${line} ${left.shift()}`.trim();
    if (line === '') break;
    fitted.push(line);
  }
  if (left.length === 0 || fitted.length === 0) return fitted;
  // Room for the ellipsis, if need be at the cost of a word.
  let last = fitted.pop()!;
  while (last.length + 1 > letters) {
    const cut = last.lastIndexOf(' ');
    if (cut < 0) return fitted;
    last = last.slice(0, cut);
  }
  return [...fitted, `${last}…`];
}
