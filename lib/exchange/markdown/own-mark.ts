/** The first line of a Markdown file that Plumbline wrote: its lists are read as exactly the lines they were. */
export const OWN_MARK = '<!-- Plumbline notes, form 1 -->';

/** Stands in the place of a lead where a line has none. */
export const EMPTY_LEAD = '—';
