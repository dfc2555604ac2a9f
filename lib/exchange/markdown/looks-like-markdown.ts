/** Two of these make it likely that a text is Markdown; the first kinds do so alone. */
const SURE = /^#{1,6} \S|^(```|~~~)|^\|.*\|[ \t]*$|^\s*[-*+] \[[ x]\] /m;
const LIKELY = /^\s*([-*+]|\d{1,3}[.)]) +\S|^> \S|\*\*[^\s*][^*]*\*\*|\[[^\]]+\]\([^)]+\)|`[^`]+`/gm;

/** Whether a text looks as if it was written in Markdown. */
export const looksLikeMarkdown = (text: string): boolean =>
  SURE.test(text) || [...text.matchAll(LIKELY)].length > 1;
