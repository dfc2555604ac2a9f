import { LONGEST_LINE } from '#lib/model/item.ts';

/** Signs that lists begin their points with when they are copied as text. */
const BULLET = /^\s*(?:[-*•‣◦–]|\(?\d{1,3}[.)]|\(?[a-z][.)])\s+/i;

/** The lines of a text that is pasted: one for each of its lines that has words, without bullets and numbers. */
export function pastedLines(text: string): string[] {
  return text
    .split(/\r\n?|\n|\u2028|\u2029/)
    .map((line) => line.replace(BULLET, '').trim())
    .filter((line) => line !== '')
    .flatMap(cut);
}

/** A line that is longer than a line may be, cut between words so that nothing of it is lost. */
function cut(line: string): string[] {
  const pieces: string[] = [];
  let left = line;
  while (left.length > LONGEST_LINE) {
    const space = left.lastIndexOf(' ', LONGEST_LINE);
    // Not between the halves of a character.
    const hard = /[\uD800-\uDBFF]/.test(left[LONGEST_LINE - 1]!) ? LONGEST_LINE - 1 : LONGEST_LINE;
    const at = space > 0 ? space : hard;
    pieces.push(left.slice(0, at));
    left = left.slice(at).trim();
  }
  return [...pieces, left];
}
