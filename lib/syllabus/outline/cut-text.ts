/** Cuts a text to a length in characters, between words where it can, and never inside a character. */
export function cutText(text: string, longest: number): string {
  if (text.length <= longest) return text;
  const start = text.slice(0, longest);
  const space = start.lastIndexOf(' ');
  const cut = space > longest / 2 ? start.slice(0, space) : start.replace(/[\ud800-\udbff]$/, '');
  return cut.trimEnd();
}
