import { StudentError } from '#lib/model/student-error.ts';
import { cutText } from '../../outline/cut-text.ts';
import { readHeading, readLine } from '../../outline/read-line.ts';
import type { ReadLine } from '../../outline/read-line.ts';
import { readLines } from '../../outline/read-lines.ts';
import { LONGEST, MOST_ROWS } from '../../outline-row.ts';
import type { OutlineReading, OutlineRemark } from '../../outline-row.ts';
import { type Layout, layoutOf } from './layout.ts';
import { headingLevels } from './levels.ts';
import { withoutContents, withoutHeadsAndFeet } from './page-furniture.ts';
import { type PageOfText, type SpecLine, linesOfPages } from './page-lines.ts';
import { type Paragraph, paragraphsOf } from './paragraphs.ts';

export type { PageOfText } from './page-lines.ts';

/** With fewer letters than this a PDF is taken for a scan: stray page numbers are no text. */
const FEWEST_LETTERS = 20;

/**
 * Reads a syllabus from the text of a PDF, such as the specification of an exam board. What belongs under what is told
 * by numbers, by how far lines are set in, and by the size of their letters. Running heads, page numbers, the table of
 * contents, the cover and paragraphs that explain are left out, with a remark each.
 * Errors: StudentError `errorSyllabusScan` (number of pages) where there is no text; `errorSyllabusEmpty`.
 */
export function readSpecification(pages: readonly PageOfText[]): OutlineReading {
  const all = linesOfPages(pages);
  const letters = all.reduce((sum, { text }) => sum + (text.match(/\p{L}/gu) ?? []).length, 0);
  if (letters < FEWEST_LETTERS) throw new StudentError('errorSyllabusScan', pages.length);
  const inside = withoutHeadsAndFeet(all);
  const content = withoutContents(inside.lines);
  const layout = layoutOf(content.lines);
  const cover = withoutCover(paragraphsOf(content.lines, layout), layout);
  const { body, remarks: prose } = withoutProse(cover.body, layout);
  const levels = headingLevels(body, layout);
  const kept = body.slice(0, MOST_ROWS);
  const cut = body[kept.length];
  const reading = readLines(kept.flatMap((one, i) => readParagraph(one, levels[i] ?? null, layout)));
  const pageOf = new Map(all.map(({ line, page }) => [line, page]));
  const remarks = [
    ...reading.remarks.filter((remark) => isTold(remark, kept, levels)),
    ...[...inside.remarks, ...content.remarks, ...cover.remarks, ...prose, ...picturePages(pages, all)],
    ...(cut ? [remarkOn(cut, 'too-many')] : []),
  ];
  return {
    ...reading,
    courseName: cover.title ?? reading.courseName,
    remarks: remarks
      .map((remark) => ({ ...remark, page: remark.page ?? pageOf.get(remark.line) ?? 1 }))
      .sort((a, b) => a.line - b.line),
  };
}

/** Sizes of headings skip levels as they like, and paragraphs of a PDF are joined throughout: neither is a guess. */
function isTold(
  { about, line }: OutlineRemark,
  kept: readonly Paragraph[],
  levels: readonly (number | null)[],
): boolean {
  if (about !== 'level-skipped') return true;
  const at = kept.findIndex((one) => one.line === line);
  return (levels[at] ?? null) === null;
}

/** A page has no more columns of letters: what stands further out stands beside it. */
const MOST_COLUMNS = 300;

function readParagraph(one: Paragraph, level: number | null, layout: Layout): ReadLine[] {
  const columns = Math.round((one.left - layout.left(one.page)) / (0.5 * layout.size));
  const indent = Math.min(Math.max(0, columns), MOST_COLUMNS);
  const base = {
    line: one.line,
    afterBlank: true,
    indent,
    width: indent + one.text.length,
    unmarked: one.text,
  };
  if (level !== null) return [{ ...base, ...readHeading(level, one.text) }];
  const read = readLine({ line: one.line, text: ' '.repeat(indent) + one.text, afterBlank: true });
  return read ? [read] : [];
}

const remarkOn = ({ line, page, text }: SpecLine, about: OutlineRemark['about']): OutlineRemark => ({
  line,
  page,
  about,
  text: cutText(text, LONGEST.statement),
});

/** A cover has no more paragraphs than this. */
const MOST_ON_COVER = 12;

/**
 * A first page without any number is a cover, its largest line the title: where other pages have numbers, or where no
 * other page has a line as large.
 */
function withoutCover(
  paragraphs: readonly Paragraph[],
  layout: Layout,
): { body: Paragraph[]; title: string | null; remarks: OutlineRemark[] } {
  const first = paragraphs[0]?.page;
  const cover = paragraphs.filter(({ page }) => page === first);
  const rest = paragraphs.slice(cover.length);
  const isNumbered = ({ text }: Paragraph): boolean => {
    const mark = readLine({ line: 1, text, afterBlank: true })?.mark;
    return mark?.kind === 'label' && mark.label.sure;
  };
  const largest = cover.reduce((best, one) => (one.size > best.size ? one : best), cover[0]!);
  const isCover =
    cover.length <= MOST_ON_COVER &&
    rest.length >= 3 &&
    !cover.some(isNumbered) &&
    (rest.filter(isNumbered).length >= 3 || rest.every(({ size }) => size < 0.93 * largest.size));
  if (!isCover) return { body: [...paragraphs], title: null, remarks: [] };
  const title = largest.size > layout.size ? cutText(largest.text, LONGEST.courseName) : null;
  const others = cover.filter((one) => title === null || one !== largest);
  return { body: rest, title, remarks: others.map((one) => remarkOn(one, 'cover')) };
}

/** From this many words on, several sentences without a number are taken for an explanation. */
const PROSE_WORDS = 25;

function withoutProse(
  paragraphs: readonly Paragraph[],
  layout: Layout,
): { body: Paragraph[]; remarks: OutlineRemark[] } {
  const isProse = ({ text, size }: Paragraph): boolean =>
    size <= 1.07 * layout.size &&
    text.split(' ').length >= PROSE_WORDS &&
    /[.!?]\s+\p{Lu}/u.test(text) &&
    readLine({ line: 1, text, afterBlank: true })?.mark.kind === 'none';
  return {
    body: paragraphs.filter((one) => !isProse(one)),
    remarks: paragraphs.filter(isProse).map((one) => remarkOn(one, 'prose')),
  };
}

/** One remark for each page without any text, placed behind the lines of the pages before it. */
function picturePages(pages: readonly PageOfText[], lines: readonly SpecLine[]): OutlineRemark[] {
  const written = new Set(lines.map(({ page }) => page));
  return pages
    .filter(({ page }) => !written.has(page))
    .map(({ page }) => ({
      line: lines.findLast((line) => line.page < page)?.line ?? 0,
      page,
      about: 'picture-page' as const,
    }));
}
