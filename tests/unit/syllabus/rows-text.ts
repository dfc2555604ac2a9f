import type { OutlineDraftRow } from '#lib/syllabus/outline-row.ts';

/** Rows as text, one a line: two spaces a level, "t" or "s", the code in brackets, the text, the share in braces. */
export const rowsText = (rows: readonly OutlineDraftRow[]): string[] =>
  rows.map(({ kind, depth, code, text, share }) => {
    const label = code ? `[${code}] ` : '';
    const weight = share === null ? '' : ` {${share}}`;
    return `${'  '.repeat(depth)}${kind === 'topic' ? 't' : 's'} ${label}${text}${weight}`;
  });
