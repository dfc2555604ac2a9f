/**
 * The longest passage, in UTF-16 units of plain text and of sanitised HTML. They repeat lib/model/clip.ts (a test
 * holds the two together): its schemas would weigh more in the page than all of this folder.
 */
export const LONGEST_PASSAGE = 100_000;
export const LONGEST_PASSAGE_HTML = 1_500_000;

/** As lib/model/clip.ts and lib/model/source.ts have them. */
export const LONGEST_HEADING = 500;
export const MOST_HEADINGS = 8;
export const LONGEST_URL = 4000;
export const LONGEST_TITLE = 1000;
export const LONGEST_SITE = 300;
export const LONGEST_AUTHOR = 300;

/** Cuts text to at most `longest` UTF-16 units without splitting a surrogate pair. */
export function cut(text: string, longest: number): string {
  if (text.length <= longest) return text;
  const last = text.charCodeAt(longest - 1);
  return text.slice(0, last >= 0xd800 && last <= 0xdbff ? longest - 1 : longest);
}

/** The text on one line, with every run of white space as one space. */
export function oneLine(text: string | null | undefined): string {
  return (text ?? '').replace(/\s+/g, ' ').trim();
}
